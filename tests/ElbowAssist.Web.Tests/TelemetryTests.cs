using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Text;
using ElbowAssist.Testing;

namespace ElbowAssist.Web.Tests;

/// <summary>Telemetry goes to a collector where the environment names one, without anything that identifies; and nowhere else.</summary>
public sealed class TelemetryTests
{
    [Fact]
    public async Task TracesAndMetrics_ReachTheCollector_WithoutNamesOrIdentifiers()
    {
        using var collector = new Collector();
        using var folder = new TemporaryFolder();
        using var program = Serve(folder, collector.Address);
        var address = await AddressOfAsync(program);
        using var client = new HttpClient { BaseAddress = address };
        var film = await File.ReadAllBytesAsync(Path.Combine(RunningService.Demos, "adult-film", "lateral.png"));
        using var answer = await client.PostAsync("/api/readings?name=Invented-Person.png&ageMonths=400&patient=Patient/4711", new ByteArrayContent(film));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var missing = await client.GetAsync("/api/studies/Invented-4711");

        await collector.UntilAsync("/v1/traces", "read film");
        await collector.UntilAsync("/v1/traces", "GET /api/studies/{study}");
        await collector.UntilAsync("/v1/metrics", "elbowassist.films.read");

        program.Kill();
        Assert.Equal(["/v1/metrics", "/v1/traces"], collector.Received.Select(r => r.Path).Distinct().Order(StringComparer.Ordinal));
        Assert.DoesNotContain(collector.Received, r => r.Text.Contains("Invented-", StringComparison.OrdinalIgnoreCase) || r.Text.Contains("4711", StringComparison.Ordinal));
    }

    [Fact]
    public async Task WithoutACollector_NobodyListens()
    {
        var service = new RunningService();
        await service.InitializeAsync();
        using var source = new ActivitySource("ElbowAssist");
        Assert.False(source.HasListeners());
        await service.DisposeAsync();
    }

    private static Process Serve(TemporaryFolder folder, Uri collector)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "elbowassist.dll"), "serve", "--port", "0", "--store", folder.File("studies.db")]) { RedirectStandardOutput = true, UseShellExecute = false };
        start.Environment["OTEL_EXPORTER_OTLP_ENDPOINT"] = collector.AbsoluteUri;
        start.Environment["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf";
        start.Environment["OTEL_BSP_SCHEDULE_DELAY"] = "200";
        start.Environment["OTEL_METRIC_EXPORT_INTERVAL"] = "300";
        return Process.Start(start)!;
    }

    private static async Task<Uri> AddressOfAsync(Process program)
    {
        const string Before = "The reading page is at ";
        var line = await program.StandardOutput.ReadLineAsync();
        Assert.StartsWith(Before, line, StringComparison.Ordinal);
        return new Uri(line![Before.Length..]);
    }

    /// <summary>Takes what a collector would take, as text: strings stand in protobuf as they are.</summary>
    private sealed class Collector : IDisposable
    {
        private readonly HttpListener listener = new();

        public Collector()
        {
            using (var socket = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0))
            {
                socket.Start();
                Address = new Uri(FormattableString.Invariant($"http://127.0.0.1:{((IPEndPoint)socket.LocalEndpoint).Port}/"));
            }

            listener.Prefixes.Add(Address.AbsoluteUri);
            listener.Start();
            _ = TakeAsync();
        }

        public Uri Address { get; }

        public ConcurrentBag<(string Path, string Text)> Received { get; } = [];

        public async Task UntilAsync(string path, string text)
        {
            for (var i = 0; i < 600 && !Received.Any(r => r.Path == path && r.Text.Contains(text, StringComparison.Ordinal)); i++)
            {
                await Task.Delay(100);
            }

            Assert.Contains(Received, r => r.Path == path && r.Text.Contains(text, StringComparison.Ordinal));
        }

        public void Dispose() => ((IDisposable)listener).Dispose();

        private async Task TakeAsync()
        {
            try
            {
                while (true)
                {
                    var context = await listener.GetContextAsync();
                    using var body = new MemoryStream();
                    await context.Request.InputStream.CopyToAsync(body);
                    Received.Add((context.Request.Url!.AbsolutePath, Encoding.Latin1.GetString(body.ToArray())));
                    context.Response.ContentType = "application/x-protobuf";
                    context.Response.Close();
                }
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                // Closed: the test is over.
            }
        }
    }
}
