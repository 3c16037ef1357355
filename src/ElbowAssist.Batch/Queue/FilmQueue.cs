using ElbowAssist.Batch.Results;
using NATS.Client.Core;
using NATS.Client.JetStream;
using NATS.Client.JetStream.Models;
using NATS.Client.KeyValueStore;
using NATS.Client.ObjectStore;

namespace ElbowAssist.Batch.Queue;

/// <summary>
/// Work, films and results on the servers: a work-queue stream, an object store and a key-value store. Every call may
/// throw <see cref="NatsException"/> while servers are away; callers try again.
/// </summary>
internal sealed class FilmQueue : IAsyncDisposable
{
    private readonly NatsConnection connection;
    private readonly NatsJSContext jetStream;
    private readonly QueueNames names;
    private readonly INatsJSStream stream;
    private readonly INatsKVStore results;
    private readonly INatsObjStore films;

    public FilmQueue(NatsConnection connection, NatsJSContext jetStream, QueueNames names, INatsJSStream stream, INatsJSConsumer work, INatsKVStore results, INatsObjStore films)
    {
        (this.connection, this.jetStream, this.names, this.stream, this.results, this.films) = (connection, jetStream, names, stream, results, films);
        Work = work;
    }

    /// <summary>Gives each film to one worker at a time.</summary>
    public INatsJSConsumer Work { get; }

    /// <summary>Whether a server is reached now.</summary>
    public bool IsConnected => connection.ConnectionState == NatsConnectionState.Open;

    /// <summary>Puts work into the queue; where it stands there.</summary>
    /// <param name="message">The work.</param>
    /// <param name="id">Told apart by the server for two minutes, so that an answer lost on the way makes no second message.</param>
    /// <param name="cancellation">Cancels.</param>
    public async Task<ulong> SubmitAsync(WorkMessage message, string id, CancellationToken cancellation)
    {
        var answer = await jetStream.PublishAsync(
            names.Subject, message.Write(), serializer: NatsRawSerializer<byte[]>.Default, opts: new NatsJSPubOpts { MsgId = id }, cancellationToken: cancellation).ConfigureAwait(false);
        return answer.Error is { } error ? throw new NatsJSApiException(error) : answer.Seq;
    }

    /// <summary>Where the work stands that no worker has taken yet: the places behind the first, up to the second.</summary>
    public async Task<(ulong Behind, ulong Last)> NotTakenAsync(CancellationToken cancellation)
    {
        await Work.RefreshAsync(cancellation).ConfigureAwait(false);
        await stream.RefreshAsync(cancellation).ConfigureAwait(false);
        var last = (ulong)stream.Info.State.LastSeq;
        return (Work.Info.NumPending == 0 ? last : (ulong)Work.Info.Delivered.StreamSeq, last);
    }

    /// <summary>Whether work still waits, or is with a worker. The answer carries the whole message.</summary>
    public async Task<bool> IsQueuedAsync(ulong place, CancellationToken cancellation)
    {
        try
        {
            await stream.GetAsync(new StreamMsgGetRequest { Seq = place }, cancellation).ConfigureAwait(false);
            return true;
        }
        catch (NatsJSApiException e) when (e.Error.Code == 404)
        {
            return false;
        }
    }

    /// <summary>Stores a film's bytes.</summary>
    public async Task PutFilmAsync(string content, ReadOnlyMemory<byte> film, CancellationToken cancellation)
    {
        using var bytes = new MemoryStream(film.ToArray(), writable: false);
        await films.PutAsync(content, bytes, leaveOpen: true, cancellation).ConfigureAwait(false);
    }

    /// <summary>A film's bytes; null where they are not, or no longer, there.</summary>
    public async Task<byte[]?> GetFilmAsync(string content, CancellationToken cancellation)
    {
        try
        {
            return await films.GetBytesAsync(content, cancellation).ConfigureAwait(false);
        }
        catch (NatsObjNotFoundException)
        {
            return null;
        }
    }

    /// <summary>Lets go of a film's bytes.</summary>
    public async Task DropFilmAsync(string content, CancellationToken cancellation)
    {
        try
        {
            await films.DeleteAsync(content, cancellation).ConfigureAwait(false);
        }
        catch (NatsObjNotFoundException)
        {
            // Another batch with the same film was first.
        }
    }

    /// <summary>The stored result of a film, or null.</summary>
    public async Task<FilmResult?> FindResultAsync(string content, CancellationToken cancellation)
    {
        var entry = await results.TryGetEntryAsync<byte[]>(names.Result(content), serializer: NatsRawSerializer<byte[]>.Default, cancellationToken: cancellation).ConfigureAwait(false);
        return entry.Success
            ? PackedResult.Unpack(entry.Value.Value)
            : entry.Error is NatsKVKeyNotFoundException or NatsKVKeyDeletedException ? null : throw entry.Error;
    }

    /// <summary>Stores a result unless there is one: the first stays.</summary>
    public async Task StoreResultAsync(string content, FilmResult result, CancellationToken cancellation)
    {
        var stored = await results.TryCreateAsync(names.Result(content), PackedResult.Pack(result), NatsRawSerializer<byte[]>.Default, cancellation).ConfigureAwait(false);
        if (!stored.Success && stored.Error is not (NatsKVCreateException or NatsKVWrongLastRevisionException))
        {
            throw stored.Error;
        }
    }

    /// <summary>Results as they are stored from now on.</summary>
    public async IAsyncEnumerable<(string Content, FilmResult Result)> WatchAsync([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var entry in results.WatchAsync<byte[]>(
            names.EveryResult, NatsRawSerializer<byte[]>.Default, new NatsKVWatchOpts { UpdatesOnly = true, IgnoreDeletes = true }, cancellation).ConfigureAwait(false))
        {
            if (PackedResult.Unpack(entry.Value) is { } result)
            {
                yield return (QueueNames.ContentOf(entry.Key), result);
            }
        }
    }

    /// <summary>Sets up anew what the servers have lost; leaves what is there.</summary>
    public Task MendAsync(QueueOptions options, CancellationToken cancellation) => QueueSetup.EnsureAsync(jetStream, names, options, cancellation);

    public async ValueTask DisposeAsync() =>
        await connection.DisposeAsync().AsTask().WaitAsync(Patiently.LongestTry).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
}
