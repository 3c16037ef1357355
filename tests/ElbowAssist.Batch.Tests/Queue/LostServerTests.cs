using ElbowAssist.Batch.Queue;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;
using ElbowAssist.Batch.Tests.Support;
using ElbowAssist.Testing;
using NATS.Client.Core;
using NATS.Client.JetStream;

namespace ElbowAssist.Batch.Tests.Queue;

/// <summary>A server that goes for good or forgets: nothing waits for ever.</summary>
public sealed class LostServerTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [NatsTheory]
    [InlineData(2)] // while every film that is not yet submitted waits for room
    [InlineData(6)] // while one is being submitted and others wait for room
    [InlineData(40)] // after all were submitted
    public async Task ServerThatDoesNotComeBack_EndsTheBatch_WithASentence(int window)
    {
        using var servers = new NatsServers(1);
        var reading = new CountingReading();
        var options = Options(servers) with { Window = window, Outage = TimeSpan.FromSeconds(2) };
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        var opened = 0;
        var source = ListSource.Of(20, _ => { if (Interlocked.Increment(ref opened) == Math.Min(window, 19)) { servers.Kill(0); } });
        var batch = RunAsync(options, reading, source, results);
        var e = await Assert.ThrowsAsync<BatchException>(() => batch.WaitAsync(TimeSpan.FromMinutes(3)));
        Assert.Contains("run the same command again to go on", e.Message, StringComparison.Ordinal);
    }

    [NatsTheory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task WhatTheServerHasForgotten_IsSetUpAnew_AndEveryFilmIsRead(bool onlyWhoWorks)
    {
        using var servers = new NatsServers(1);
        var reading = new CountingReading();
        var options = Options(servers);
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        var batch = RunAsync(options, reading, ListSource.Of(4), results);
        await using (var connection = new NatsConnection(new NatsOpts { Url = servers.Addresses }))
        {
            var jetStream = new NatsJSContext(connection);
            await UntilAsync(async () => (await jetStream.GetStreamAsync(QueueNames.Stream)).Info.State.Messages == 4);
            if (onlyWhoWorks)
            {
                Assert.True(await jetStream.DeleteConsumerAsync(QueueNames.Stream, new QueueNames(reading.Recipe).Consumer));
            }
            else
            {
                foreach (var stream in new[] { QueueNames.Stream, "KV_" + QueueNames.Results, "OBJ_" + QueueNames.Films })
                {
                    Assert.True(await jetStream.DeleteStreamAsync(stream));
                }
            }
        }

        await RunUntilAsync(new FilmWorker(options, reading, null), batch);
        Assert.True((await batch).Complete);
        Assert.Equal(4, results.Count);
    }

    [NatsFact]
    public async Task WorkThatNobodyHasTaken_IsToldFromWorkInHand_AndFromWorkThatIsGone()
    {
        using var servers = new NatsServers(1);
        var recipe = new CountingReading().Recipe;
        await using var queue = await QueueSetup.ForBatchAsync(Options(servers), recipe, default);
        var places = new List<ulong>();
        for (var i = 0; i < 3; i++)
        {
            places.Add(await queue.SubmitAsync(new WorkMessage(new string('c', 64), "a.png", [], null, [1], null), FormattableString.Invariant($"id{i}"), default));
        }

        Assert.Equal((0ul, 3ul), await queue.NotTakenAsync(default));
        var message = await queue.Work.NextAsync(NatsRawSerializer<byte[]>.Default);
        Assert.Equal((places[0], places[2]), await queue.NotTakenAsync(default));
        Assert.True(await queue.IsQueuedAsync(places[0], default));
        await message!.AckAsync(new AckOpts { DoubleAck = true });
        Assert.False(await queue.IsQueuedAsync(places[0], default));
        await queue.Work.NextAsync(NatsRawSerializer<byte[]>.Default);
        await queue.Work.NextAsync(NatsRawSerializer<byte[]>.Default);
        Assert.Equal((places[2], places[2]), await queue.NotTakenAsync(default));
    }

    [NatsFact]
    public async Task WorkerThatFailsForAReasonOfItsOwn_Ends_AndDoesNotGoOnWithFewer()
    {
        using var servers = new NatsServers(1);
        var reading = new CountingReading { Before = () => throw new NotSupportedException() };
        var options = Options(servers);
        using var results = ResultsFile.Open(folder.File("r.jsonl"), reading.Recipe);
        using var stop = new CancellationTokenSource();
        var batch = new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(ListSource.Of(1), "{}"u8.ToArray(), results, new Pace(TimeProvider.System), stop.Token);
        await Assert.ThrowsAsync<NotSupportedException>(() => new FilmWorker(options, reading, null).RunAsync(2, () => { }, default).WaitAsync(TimeSpan.FromMinutes(1)));
        await stop.CancelAsync();
        Assert.True((await batch).Stopped);
    }

    public void Dispose() => folder.Dispose();

    private static QueueOptions Options(NatsServers servers) => new() { Servers = servers.Addresses, Rest = TimeSpan.FromMilliseconds(300), Patience = TimeSpan.FromSeconds(10) };

    private static Task<BatchOutcome> RunAsync(QueueOptions options, CountingReading reading, ListSource source, ResultsFile results) =>
        new QueueRun(options, reading.Recipe, TimeProvider.System).RunAsync(source, "{}"u8.ToArray(), results, new Pace(TimeProvider.System), default);

    private static async Task UntilAsync(Func<Task<bool>> done)
    {
        while (true)
        {
            try
            {
                if (await done())
                {
                    return;
                }
            }
            catch (NatsException)
            {
                // not up, or not set up, yet
            }

            await Task.Delay(50);
        }
    }

    private static async Task RunUntilAsync(FilmWorker worker, Task batch)
    {
        using var stop = new CancellationTokenSource();
        var working = worker.RunAsync(2, () => { }, stop.Token);
        await batch.WaitAsync(TimeSpan.FromMinutes(2));
        await stop.CancelAsync();
        await working;
    }
}
