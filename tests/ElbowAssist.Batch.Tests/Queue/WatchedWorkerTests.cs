using System.Globalization;
using System.Net;
using System.Net.Sockets;
using ElbowAssist.Batch.Tests.Support;
using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests.Queue;

/// <summary>What a worker tells those who watch it, and how it ends.</summary>
public sealed class WatchedWorkerTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly HttpClient http = new();

    [NatsFact]
    public async Task Worker_TellsHealthAndMetrics_AndEndsWellWhenStopped()
    {
        using var servers = new NatsServers(1);
        var models = TinyModels.Write(folder);
        var films = SmallFilms.Write(folder, 6);
        var port = FreePort();
        var text = port.ToString(CultureInfo.InvariantCulture);
        Assert.Contains("No worker answers", Support.Program.Run(models, "doctor", "--monitor", text).Error, StringComparison.Ordinal);

        var worker = Support.Program.Start(models, null, "worker", "--server", servers.Addresses, "--threads", "1", "--monitor", text);
        var ending = Task.Run(() => Support.Program.Finish(worker));
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await HealthAsync(port));
        var early = Support.Program.Run(models, "doctor", "--monitor", text);
        Assert.Equal((1, true), (early.ExitCode, early.Output.Contains("no batch yet", StringComparison.Ordinal)));

        Assert.Equal(0, Support.Program.Run(models, "batch", films, "--server", servers.Addresses, "--out", folder.File("r.jsonl")).ExitCode);
        Assert.Equal(HttpStatusCode.OK, await HealthAsync(port));
        Assert.Equal(0, Support.Program.Run(models, "doctor", "--monitor", "0.0.0.0:" + text).ExitCode);
        var metrics = await http.GetStringAsync(new Uri($"http://127.0.0.1:{text}/metrics"));
        Assert.Contains("\nelbowassist_worker_films_read_total 6\n", metrics, StringComparison.Ordinal);
        Assert.DoesNotContain(".png", metrics, StringComparison.Ordinal);

        Support.Program.Signal(worker, "-TERM");
        var end = await ending;
        Assert.Equal(0, end.ExitCode);
        Assert.Contains("6 films read, 0 known already, 0 given back.", end.Output, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        http.Dispose();
        folder.Dispose();
    }

    private async Task<HttpStatusCode> HealthAsync(int port)
    {
        while (true)
        {
            try
            {
                using var answer = await http.GetAsync(new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}/health")));
                return answer.StatusCode;
            }
            catch (HttpRequestException)
            {
                await Task.Delay(100); // it loads its models first
            }
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
