using System.Net;
using ElbowAssist.Batch.Queue;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Prometheus;

namespace ElbowAssist.Cli.Batches;

/// <summary>
/// What a worker can be watched by: <c>/health</c> (200 while it reaches a server and takes films, else 503) and
/// <c>/metrics</c> in the text format of Prometheus. Counts only; no name or identifier of a film.
/// </summary>
internal static class WorkerMonitor
{
    public static async Task<WebApplication> StartAsync(IPEndPoint address, WorkerState state)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(k =>
        {
            k.Listen(address);
            k.AddServerHeader = false;
            k.Limits.MaxRequestBodySize = 0;
        });
        var app = builder.Build();
        app.MapGet("/health", () => state.Connected && !state.Draining
            ? Results.Text("up\n")
            : Results.Text(state.Draining ? "draining\n" : "no server or no batch yet\n", statusCode: StatusCodes.Status503ServiceUnavailable));
        app.MapMetrics(registry: Registry(state));
        try
        {
            await app.StartAsync().ConfigureAwait(false);
            return app;
        }
        catch (IOException)
        {
            await app.DisposeAsync().ConfigureAwait(false);
            throw new UserErrorException($"{address} is taken or not an address of this machine; name another with --monitor.");
        }
    }

    /// <summary>Asks a worker for its health, and tells the answer; an address that stands for all is asked on this machine.</summary>
    public static async Task<ExitCode> AskAsync(IPEndPoint worker, CancellationToken cancellation)
    {
        using var http = new HttpClient { Timeout = TimeSpan.FromSeconds(5), MaxResponseContentBufferSize = 1024 };
        var host = worker.Address.Equals(IPAddress.Any) || worker.Address.Equals(IPAddress.IPv6Any) ? IPAddress.Loopback : worker.Address;
        try
        {
            using var answer = await http.GetAsync(new Uri($"http://{new IPEndPoint(host, worker.Port)}/health"), cancellation).ConfigureAwait(false);
            var said = await answer.Content.ReadAsStringAsync(cancellation).ConfigureAwait(false);
            Console.Out.WriteLine($"The worker at {worker} says: {said.TrimEnd()}.");
            return answer.IsSuccessStatusCode ? ExitCode.Done : ExitCode.Failed;
        }
        catch (Exception e) when (e is HttpRequestException || (e is OperationCanceledException && !cancellation.IsCancellationRequested))
        {
            throw new UserErrorException($"No worker answers at {worker}; start one with --monitor {worker}.");
        }
    }

    private static CollectorRegistry Registry(WorkerState state)
    {
        var registry = Metrics.NewCustomRegistry();
        var metrics = Metrics.WithCustomRegistry(registry);
        var read = metrics.CreateCounter("elbowassist_worker_films_read_total", "Films read and stored.");
        var known = metrics.CreateCounter("elbowassist_worker_films_known_total", "Films whose result was there already.");
        var givenBack = metrics.CreateCounter("elbowassist_worker_films_given_back_total", "Films given back to the queue or to their batch.");
        var troubles = metrics.CreateCounter("elbowassist_worker_server_troubles_total", "Times that servers could not be reached or broke off.");
        var busy = metrics.CreateGauge("elbowassist_worker_films_in_hand", "Films being read now.");
        var memory = metrics.CreateGauge("elbowassist_worker_resident_bytes", "Memory of the process that is resident.");
        registry.AddBeforeCollectCallback(() =>
        {
            read.IncTo(state.Read);
            known.IncTo(state.Known);
            givenBack.IncTo(state.GivenBack);
            troubles.IncTo(state.Troubles);
            busy.Set(state.Busy);
            memory.Set(Environment.WorkingSet);
        });
        return registry;
    }
}
