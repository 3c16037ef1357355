using System.Net;
using System.Security.Cryptography;
using ElbowAssist.Reading;
using ElbowAssist.Store;
using ElbowAssist.Web;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace ElbowAssist.Cli.Serving;

/// <summary>What <c>serve</c> was asked to do.</summary>
/// <param name="Port">Port; 0 takes a free one.</param>
/// <param name="Address">Address to listen on.</param>
/// <param name="Hosts">Further host names to answer to.</param>
/// <param name="Origins">Origins of web viewers that may call.</param>
/// <param name="StoreFile">File of the store, or null for the usual one.</param>
/// <param name="WatchFolder">Folder whose films become studies, or null.</param>
/// <param name="Archive">Address of the DICOMweb service films may be fetched from, or null.</param>
/// <param name="Model">Name of a model folder, or null for the default.</param>
internal sealed record ServeRequest(int Port, IPAddress Address, IReadOnlyList<string> Hosts, IReadOnlyList<string> Origins, string? StoreFile, string? WatchFolder, Uri? Archive, string? Model);

/// <summary>Runs the page and the service until stopped.</summary>
internal static class ServeRun
{
    public static async Task<int> RunAsync(ServeRequest request, CancellationToken cancellation)
    {
        if (request.WatchFolder is { } watched && !Directory.Exists(watched))
        {
            throw new UserErrorException($"The folder {watched} does not exist; create it or check the name.");
        }

        StudyStore store;
        try
        {
            store = StudyStore.Open(request.StoreFile ?? StorePath.Default);
        }
        catch (StoreException e)
        {
            throw new UserErrorException(e.Message);
        }

        using (store)
        using (var desk = new FilmDesk(request.Model, LimitsFile.Read()))
        {
            var token = IPAddress.IsLoopback(request.Address) ? null : RandomNumberGenerator.GetHexString(32, lowercase: true);
            var options = new ServiceOptions
            {
                Address = request.Address,
                Port = request.Port,
                Token = token,
                AllowedHosts = request.Hosts,
                AllowedOrigins = request.Origins,
                WatchFolder = request.WatchFolder,
                Archive = request.Archive,
                // Named by the environment, so that it stands in no list of processes.
                ArchiveToken = Environment.GetEnvironmentVariable("ELBOWASSIST_ARCHIVE_TOKEN"),
                TelemetryEndpoint = Uri.TryCreate(Environment.GetEnvironmentVariable("OTEL_EXPORTER_OTLP_ENDPOINT"), UriKind.Absolute, out var collector) ? collector : null,
                DemoFolder = Path.Combine(AppContext.BaseDirectory, "Demo"),
            };
            await using var app = ElbowService.Create(options, desk, store);
            try
            {
                await app.StartAsync(cancellation).ConfigureAwait(false);
            }
            catch (IOException)
            {
                throw new UserErrorException(FormattableString.Invariant($"Port {request.Port} is taken; stop the other program or name another port with --port."));
            }

            var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
            Console.Out.WriteLine($"The reading page is at {address}/{(token is null ? "" : $"?token={token}")}");
            Console.Out.WriteLine($"{Caution.Text} Stop with Ctrl-C.");
            _ = WarmAsync(desk, options.DemoFolder, cancellation);
            try
            {
                await Task.Delay(Timeout.Infinite, cancellation).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                await app.StopAsync(CancellationToken.None).ConfigureAwait(false);
            }
        }

        return (int)ExitCode.Done;
    }

    // The page comes first: a browser that opens it now gets the processor.
    private static async Task WarmAsync(FilmDesk desk, string? demos, CancellationToken cancellation)
    {
        await Task.Delay(TimeSpan.FromSeconds(1), cancellation).ConfigureAwait(false);
        var film = Directory.Exists(demos) ? Directory.EnumerateFiles(demos, "*.png", SearchOption.AllDirectories).FirstOrDefault() : null;
        await Task.Run(() => desk.Warm(film), cancellation).ConfigureAwait(false);
    }
}
