using System.Diagnostics;
using System.Globalization;
using ElbowAssist.Batch.Tests.Support;
using ElbowAssist.Testing;
using Xunit.Abstractions;

namespace ElbowAssist.Batch.Tests.Queue;

/// <summary>
/// Three servers and several workers as processes; workers and a server are killed without warning while two batches
/// submit the same films, so that every message comes twice. The result is that of one process.
/// </summary>
/// <remarks>
/// The defaults suit continuous integration: one worker and one server. In the long form a worker is killed every two
/// seconds: <c>ELBOWASSIST_BATCH_FILMS=5000</c>, <c>ELBOWASSIST_BATCH_WORKERS=8</c>, <c>ELBOWASSIST_BATCH_KILLS=100000</c>,
/// <c>ELBOWASSIST_BATCH_OUTAGE=20</c> (seconds that a server is away); <c>tools/proving/batch</c> runs it.
/// </remarks>
public sealed class KilledWorkersTests(ITestOutputHelper output) : IDisposable
{
    private static readonly TimeSpan BetweenKills = TimeSpan.FromSeconds(2);

    private readonly TemporaryFolder folder = new();
    private readonly List<Process> workers = [];

    [NatsFact]
    public async Task EveryFilm_HasOneResult_EqualToThatOfOneProcess()
    {
        var films = SmallFilms.Write(folder, Setting("FILMS", 60));
        var outage = TimeSpan.FromSeconds(Setting("OUTAGE", 4));
        var models = TinyModels.Write(folder);
        Assert.Equal(2, Support.Program.Run(models, "batch", films, "--out", folder.File("alone.jsonl")).ExitCode);

        using var servers = new NatsServers(3);
        var started = Stopwatch.StartNew();
        Process[] batches = [.. new[] { "first", "second" }.Select(name => Support.Program.Start(
            models, null, "batch", films, "--server", servers.Addresses, "--replicas", "3", "--patience", "5", "--out", folder.File(name + ".jsonl")))];
        var ends = batches.Select(b => Task.Run(() => Support.Program.Finish(b))).ToList();
        for (var i = 0; i < Setting("WORKERS", 2); i++)
        {
            workers.Add(Worker(models, servers));
        }

        var random = new Random(11);
        var (kills, lost) = (0, false);
        while (!ends.TrueForAll(e => e.IsCompleted))
        {
            await Task.WhenAny(Task.WhenAll(ends), Task.Delay(BetweenKills));
            if (kills == Setting("KILLS", 1) || Done("first") == 0)
            {
                continue;
            }

            var victim = random.Next(workers.Count);
            await KillAsync(workers[victim]);
            workers[victim] = Worker(models, servers);
            kills++;
            if (!lost)
            {
                lost = true;
                servers.Kill(1);
                _ = Task.Run(async () =>
                {
                    await Task.Delay(outage);
                    servers.Start(1);
                });
            }
        }

        var seconds = started.Elapsed.TotalSeconds;
        Assert.All(ends, e => Assert.True(e.Result.ExitCode == 2, e.Result.Error)); // some films are damaged
        var alone = TinyModels.LinesOf(folder.File("alone.jsonl"));
        Assert.Equal(Setting("FILMS", 60), alone.Count);
        Assert.Equal(alone, TinyModels.LinesOf(folder.File("first.jsonl")));
        Assert.Equal(alone, TinyModels.LinesOf(folder.File("second.jsonl")));
        Assert.True(kills > 0 && lost, "workers and a server must have been killed meanwhile");
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{alone.Count} films, {workers.Count} workers, {kills} workers killed, a server away for {outage.TotalSeconds} s, {seconds:0} s in all: every film has one result, equal byte for byte."));
    }

    public void Dispose()
    {
        foreach (var worker in workers)
        {
            worker.Kill();
            worker.WaitForExit();
            worker.Dispose();
        }

        folder.Dispose();
    }

    private static Process Worker(string models, NatsServers servers)
    {
        var worker = Support.Program.Start(models, null, "worker", "--server", servers.Addresses, "--threads", "1");
        worker.OutputDataReceived += (_, _) => { };
        worker.BeginOutputReadLine();
        worker.ErrorDataReceived += (_, _) => { };
        worker.BeginErrorReadLine();
        return worker;
    }

    // On Linux this is SIGKILL.
    private static async Task KillAsync(Process worker)
    {
        worker.Kill();
        await worker.WaitForExitAsync();
        worker.Dispose();
    }

    private long Done(string batch) => new FileInfo(folder.File(batch + ".jsonl")) is { Exists: true } file ? file.Length : 0;

    private static int Setting(string name, int usual) =>
        Environment.GetEnvironmentVariable("ELBOWASSIST_BATCH_" + name) is { Length: > 0 } text ? int.Parse(text, CultureInfo.InvariantCulture) : usual;
}
