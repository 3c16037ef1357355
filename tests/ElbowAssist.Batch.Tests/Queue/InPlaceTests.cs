using System.Text;
using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Queue;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;
using ElbowAssist.Batch.Tests.Support;
using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests.Queue;

/// <summary>Workers that open the films themselves, below a folder that they share with the batch.</summary>
public sealed class InPlaceTests : IDisposable
{
    private static readonly byte[] Nothing = "{}"u8.ToArray();

    private readonly TemporaryFolder folder = new();
    private readonly CountingReading reading = new();

    [NatsFact]
    public async Task Results_AreThoseOfOneProcess()
    {
        WriteFilms(12);
        using (var alone = ResultsFile.Open(folder.File("alone.jsonl"), reading.Recipe))
        {
            Assert.True((await LocalRun.RunAsync(Source(), Nothing, reading, alone, new Pace(TimeProvider.System), 2, default)).Complete);
        }

        using var servers = new NatsServers(1);
        using (var results = ResultsFile.Open(folder.File("place.jsonl"), reading.Recipe))
        {
            var batch = Batch(servers, results);
            await RunUntilAsync(new FilmWorker(Options(servers), reading, folder.File("films")), batch);
            Assert.True((await batch).Complete);
        }

        Assert.Equal(TinyModels.LinesOf(folder.File("alone.jsonl")), TinyModels.LinesOf(folder.File("place.jsonl")));
    }

    [NatsFact]
    public async Task FilmThatChangedOrVanishedMeanwhile_IsTold_AndTheOthersAreRead()
    {
        WriteFilms(5);
        using var servers = new NatsServers(1);
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        var batch = Batch(servers, results);
        await using (var queue = await QueueSetup.ForWorkerAsync(Options(servers), reading.Recipe, () => { }, default))
        {
            while (!await queue.IsQueuedAsync(5, default))
            {
                await Task.Delay(50); // until all five wait for a worker
            }
        }

        folder.Write("films/1.png", "another film"u8);
        File.Delete(folder.File("films", "3.png"));
        await RunUntilAsync(new FilmWorker(Options(servers), reading, folder.File("films")), batch);

        var outcome = await batch;
        Assert.Equal(["1.png"], outcome.Changed);
        Assert.Equal(["3.png"], outcome.NotOpened);
        Assert.Empty(outcome.GivenUp);
        Assert.Equal(["0.png", "2.png", "4.png"], reading.Reads.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(3, results.Count);
    }

    public void Dispose() => folder.Dispose();

    private static QueueOptions Options(NatsServers servers) => new() { Servers = servers.Addresses, Rest = TimeSpan.FromMilliseconds(300), Patience = TimeSpan.FromSeconds(10), InPlace = true };

    private static async Task RunUntilAsync(FilmWorker worker, Task done)
    {
        using var stop = new CancellationTokenSource();
        var working = worker.RunAsync(2, () => { }, stop.Token);
        await done;
        await stop.CancelAsync();
        await working;
    }

    private Task<BatchOutcome> Batch(NatsServers servers, ResultsFile results) =>
        new QueueRun(Options(servers), reading.Recipe, TimeProvider.System).RunAsync(Source(), Nothing, results, new Pace(TimeProvider.System), default);

    private FolderSource Source() => new(folder.File("films"), f => f.EndsWith(".png", StringComparison.Ordinal));

    private void WriteFilms(int count)
    {
        for (var i = 0; i < count; i++)
        {
            folder.Write(FormattableString.Invariant($"films/{i}.png"), Encoding.UTF8.GetBytes(FormattableString.Invariant($"film {i}")));
        }
    }
}
