using ElbowAssist.Batch.Results;
using NATS.Client.Core;
using NATS.Client.JetStream;
using NATS.Client.JetStream.Models;
using NATS.Client.KeyValueStore;
using NATS.Client.ObjectStore;

namespace ElbowAssist.Batch.Queue;

/// <summary>Opens a <see cref="FilmQueue"/>.</summary>
internal static class QueueSetup
{
    // Servers that were started a moment ago are still finding each other.
    private static readonly TimeSpan WaitForServers = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan WaitForBatch = TimeSpan.FromSeconds(2);

    /// <summary>Opens it for a batch, which sets up what is missing on the servers.</summary>
    /// <exception cref="BatchException">The servers cannot be reached or do not offer what is needed.</exception>
    public static async Task<FilmQueue> ForBatchAsync(QueueOptions options, Recipe recipe, CancellationToken cancellation)
    {
        try
        {
            return await Patiently.TryAsync(c => SetUpAsync(options, recipe, c), WaitForServers, cancellation).ConfigureAwait(false);
        }
        catch (NatsJSApiException e)
        {
            throw new BatchException($"The server at {options.Servers} does not set up the queue ({e.Error.Description}); it needs JetStream, and as many servers as --replicas.", e);
        }
        catch (Exception e) when (Patiently.MayPass(e, cancellation))
        {
            throw new BatchException($"No server answers at {options.Servers}; check that it runs, its address and the credentials.", e);
        }
    }

    private static async Task<FilmQueue> SetUpAsync(QueueOptions options, Recipe recipe, CancellationToken cancellation)
    {
        var names = new QueueNames(recipe);
        var connection = Connection(options);
        try
        {
            await connection.ConnectAsync().AsTask().WaitAsync(cancellation).ConfigureAwait(false);
            var jetStream = new NatsJSContext(connection);
            var (stream, work, results, films) = await EnsureAsync(jetStream, names, options, cancellation).ConfigureAwait(false);
            return new FilmQueue(connection, jetStream, names, stream, work, results, films);
        }
        catch
        {
            await connection.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    /// <summary>Sets up what is missing on the servers, and leaves what is there.</summary>
    public static async Task<(INatsJSStream Stream, INatsJSConsumer Work, INatsKVStore Results, INatsObjStore Films)> EnsureAsync(
        NatsJSContext jetStream, QueueNames names, QueueOptions options, CancellationToken cancellation)
    {
        var stream = await jetStream.CreateOrUpdateStreamAsync(
            new StreamConfig(QueueNames.Stream, [QueueNames.Subjects])
            {
                Retention = StreamConfigRetention.Workqueue,
                Storage = StreamConfigStorage.File,
                NumReplicas = options.Replicas,
            },
            cancellation).ConfigureAwait(false);
        var work = await jetStream.CreateOrUpdateConsumerAsync(
            QueueNames.Stream,
            new ConsumerConfig(names.Consumer)
            {
                FilterSubject = names.Subject,
                AckPolicy = ConsumerConfigAckPolicy.Explicit,
                AckWait = options.Patience,
                MaxAckPending = 65_536,
            },
            cancellation).ConfigureAwait(false);
        var results = await new NatsKVContext(jetStream).CreateOrUpdateStoreAsync(
            new NatsKVConfig(QueueNames.Results) { Storage = NatsKVStorageType.File, NumberOfReplicas = options.Replicas }, cancellation).ConfigureAwait(false);
        var films = await new NatsObjContext(jetStream).CreateObjectStoreAsync(
            new NatsObjConfig(QueueNames.Films) { Storage = NatsObjStorageType.File, NumberOfReplicas = options.Replicas }, cancellation).ConfigureAwait(false);
        return (stream, work, results, films);
    }

    /// <summary>Opens it for a worker, which waits until a batch for its models has set it up.</summary>
    /// <param name="options">The servers.</param>
    /// <param name="recipe">Models and version of the worker.</param>
    /// <param name="waiting">Called once where there is nothing yet.</param>
    /// <param name="cancellation">Stops waiting.</param>
    public static async Task<FilmQueue> ForWorkerAsync(QueueOptions options, Recipe recipe, Action waiting, CancellationToken cancellation)
    {
        var names = new QueueNames(recipe);
        var connection = Connection(options);
        try
        {
            for (var told = false; ; told = true)
            {
                try
                {
                    return await Patiently.OnceAsync(c => FindAsync(connection, names, c), cancellation).ConfigureAwait(false);
                }
                catch (Exception e) when (Patiently.MayPass(e, cancellation))
                {
                    if (!told)
                    {
                        waiting();
                    }

                    await Task.Delay(WaitForBatch, cancellation).ConfigureAwait(false);
                }
            }
        }
        catch
        {
            await connection.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    private static async Task<FilmQueue> FindAsync(NatsConnection connection, QueueNames names, CancellationToken cancellation)
    {
        await connection.ConnectAsync().ConfigureAwait(false);
        var jetStream = new NatsJSContext(connection);
        var stream = await jetStream.GetStreamAsync(QueueNames.Stream, cancellationToken: cancellation).ConfigureAwait(false);
        var work = await jetStream.GetConsumerAsync(QueueNames.Stream, names.Consumer, cancellation).ConfigureAwait(false);
        var results = await new NatsKVContext(jetStream).GetStoreAsync(QueueNames.Results, cancellation).ConfigureAwait(false);
        var films = await new NatsObjContext(jetStream).GetObjectStoreAsync(QueueNames.Films, cancellation).ConfigureAwait(false);
        return new FilmQueue(connection, jetStream, names, stream, work, results, films);
    }

    private static NatsConnection Connection(QueueOptions options) => new(new NatsOpts
    {
        Url = options.Servers,
        Name = "elbowassist",
        AuthOpts = new NatsAuthOpts { CredsFile = options.CredentialsFile },
        MaxReconnectRetry = -1,
        ReconnectWaitMax = TimeSpan.FromSeconds(2),
    });
}
