using ElbowAssist.Batch.Queue;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;
using ElbowAssist.Batch.Tests.Support;
using ElbowAssist.Testing;
using NATS.Client.Core;
using NATS.Client.JetStream;

namespace ElbowAssist.Batch.Tests.Queue;

/// <summary>What can go wrong between batch, servers and workers, one thing at a time, with a server of its own.</summary>
public sealed class LostAndTwiceTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [NatsFact]
    public async Task WorkerThatDiesAfterStoring_BeforeAcknowledging_LeavesOneResult()
    {
        using var servers = new NatsServers(1);
        var reading = new CountingReading();
        var options = Options(servers) with { Patience = TimeSpan.FromSeconds(1) };
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        var batch = new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(ListSource.Of(3), "{}"u8.ToArray(), results, new Pace(TimeProvider.System), default);

        // This worker stores the results of all three and is gone before it acknowledges any.
        await using (var dying = await QueueSetup.ForWorkerAsync(options, reading.Recipe, () => { }, default))
        {
            for (var i = 0; i < 3; i++)
            {
                var message = await NextAsync(dying);
                var work = WorkMessage.Parse(message.Data)!;
                var film = work.FilmOf(work.Film ?? (await dying.GetFilmAsync(work.Content, default))!);
                await dying.StoreResultAsync(work.Content, CountingReading.ResultOf(film), default);
            }
        }

        var outcome = await batch;
        Assert.True(outcome.Complete);
        Assert.Equal(3, results.Count);

        // The three come again to another worker, which finds them done.
        var worker = new FilmWorker(options, reading, null);
        await RunUntilAsync(worker, () => worker.State.Known == 3);
        Assert.Empty(reading.Reads);
        Assert.Equal(0, worker.State.Read);
    }

    [NatsFact]
    public async Task MessageThatIsLost_IsSubmittedAnew()
    {
        using var servers = new NatsServers(1);
        var reading = new CountingReading();
        var options = Options(servers);
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        var batch = new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(ListSource.Of(4), "{}"u8.ToArray(), results, new Pace(TimeProvider.System), default);
        await using (var queue = await QueueSetup.ForWorkerAsync(options, reading.Recipe, () => { }, default))
        {
            for (var i = 0; i < 4; i++)
            {
                var message = await NextAsync(queue);
                await message.AckAsync(new AckOpts { DoubleAck = true }); // taken, and never read
            }
        }

        var worker = new FilmWorker(options, reading, null);
        await RunUntilAsync(worker, () => batch.IsCompleted);
        Assert.True((await batch).Complete);
        Assert.Equal(4, results.Count);
    }

    [NatsFact]
    public async Task FilmThatNobodyCanRead_IsGivenUp_AndTheOthersAreRead()
    {
        using var servers = new NatsServers(1);
        var reading = new CountingReading { Stubborn = new HashSet<string>(StringComparer.Ordinal) { "1.png" } };
        var options = Options(servers) with { Rest = TimeSpan.FromMilliseconds(50) };
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        var batch = new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(ListSource.Of(3), "{}"u8.ToArray(), results, new Pace(TimeProvider.System), default);
        await RunUntilAsync(new FilmWorker(options, reading, null), () => batch.IsCompleted);
        var outcome = await batch;
        Assert.Equal(["1.png"], outcome.GivenUp);
        Assert.False(outcome.Complete);
        Assert.Equal(2, results.Count);
    }

    [NatsFact]
    public async Task BatchThatIsStopped_GoesOnLater_AndNoFilmIsReadTwice()
    {
        using var servers = new NatsServers(1);
        using var stop = new CancellationTokenSource();
        var seen = 0;
        var reading = new CountingReading { Before = () => { if (Interlocked.Increment(ref seen) == 10) { stop.Cancel(); } } };
        var options = Options(servers) with { Window = 4 };
        var worker = new FilmWorker(options, reading, null);
        using var stopWorker = new CancellationTokenSource();
        var working = worker.RunAsync(2, () => { }, stopWorker.Token);
        using (var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe))
        {
            var outcome = await new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(ListSource.Of(30), "{}"u8.ToArray(), results, new Pace(TimeProvider.System), stop.Token);
            Assert.True(outcome.Stopped);
            Assert.InRange(results.Count, 0, 29);
        }

        using (var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe))
        {
            var outcome = await new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(ListSource.Of(30), "{}"u8.ToArray(), results, new Pace(TimeProvider.System), default);
            Assert.True(outcome.Complete);
            Assert.Equal(30, results.Count);
        }

        await stopWorker.CancelAsync();
        await working;
        Assert.Equal(30, reading.Reads.Count);
        Assert.All(reading.Reads, r => Assert.Equal(1, r.Value));
    }

    [NatsFact]
    public async Task WorkerOfOtherModels_TakesNothing()
    {
        using var servers = new NatsServers(1);
        var reading = new CountingReading();
        var other = new CountingReading { Recipe = reading.Recipe with { Models = new string('b', 64) } };
        var options = Options(servers);
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        var waited = new TaskCompletionSource();
        using var stopOther = new CancellationTokenSource();
        var batch = new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(ListSource.Of(3), "{}"u8.ToArray(), results, new Pace(TimeProvider.System), default);
        var others = new FilmWorker(options, other, null).RunAsync(1, waited.SetResult, stopOther.Token);
        await waited.Task;
        await RunUntilAsync(new FilmWorker(options, reading, null), () => batch.IsCompleted);
        await stopOther.CancelAsync();
        await others;
        Assert.True((await batch).Complete);
        Assert.Empty(other.Reads);
    }

    public void Dispose() => folder.Dispose();

    private static QueueOptions Options(NatsServers servers) => new() { Servers = servers.Addresses, Rest = TimeSpan.FromMilliseconds(300), Patience = TimeSpan.FromSeconds(10) };

    private static async Task<INatsJSMsg<byte[]>> NextAsync(FilmQueue queue)
    {
        while (true)
        {
            if (await queue.Work.NextAsync(NatsRawSerializer<byte[]>.Default, new NatsJSNextOpts { Expires = TimeSpan.FromSeconds(5) }) is { } message)
            {
                return message;
            }
        }
    }

    private static async Task RunUntilAsync(FilmWorker worker, Func<bool> done)
    {
        using var stop = new CancellationTokenSource();
        var working = worker.RunAsync(2, () => { }, stop.Token);
        while (!done())
        {
            await Task.Delay(50);
        }

        await stop.CancelAsync();
        await working;
    }
}
