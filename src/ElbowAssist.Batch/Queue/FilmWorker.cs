using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;
using NATS.Client.Core;
using NATS.Client.JetStream;

namespace ElbowAssist.Batch.Queue;

/// <summary>
/// Takes films from the queue, reads them and stores their results. It acknowledges after it has stored, so a worker that
/// dies at any point loses nothing: the film is given to another, which finds the result or makes the same one.
/// </summary>
/// <param name="options">The servers.</param>
/// <param name="reading">Reads films.</param>
/// <param name="filmFolder">Folder below which films named by their place lie, or null if there is none.</param>
public sealed class FilmWorker(QueueOptions options, IFilmReading reading, string? filmFolder)
{
    // A film given out this often has most likely brought down its workers; the batch hears that it got no result.
    private const int MostDeliveries = 10;

    private static readonly TimeSpan Ask = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(500);

    /// <summary>What it has done so far.</summary>
    public WorkerState State { get; } = new();

    /// <summary>Works until stopped; then finishes the films in hand.</summary>
    /// <param name="threads">Films read at the same time.</param>
    /// <param name="waiting">Called once where no batch for these models has been submitted yet.</param>
    /// <param name="stop">Stops.</param>
    public async Task RunAsync(int threads, Action waiting, CancellationToken stop)
    {
        using var announce = stop.Register(State.Drain);
        FilmQueue queue;
        try
        {
            queue = await QueueSetup.ForWorkerAsync(options, reading.Recipe, waiting, stop).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return;
        }

        await using (queue)
        {
            State.SetConnected(true);
            using var cores = new SemaphoreSlim(threads);

            // One more than reads at a time fetches the next film and stores the last result meanwhile. One that fails for a
            // reason of its own stops all: the worker ends and can be started anew, and does not go on with fewer.
            using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
            await Task.WhenAll(Enumerable.Range(0, threads + 1).Select(_ => Task.Run(() => WorkAsync(queue, cores, end), CancellationToken.None))).ConfigureAwait(false);
            State.SetConnected(false);
        }
    }

    private async Task WorkAsync(FilmQueue queue, SemaphoreSlim cores, CancellationTokenSource end)
    {
        var stop = end.Token;
        while (!stop.IsCancellationRequested)
        {
            try
            {
                var next = await Patiently.OnceAsync(
                    c => queue.Work.NextAsync(NatsRawSerializer<byte[]>.Default, new NatsJSNextOpts { Expires = Ask }, c).AsTask(), stop).ConfigureAwait(false);
                State.SetConnected(queue.IsConnected);
                if (next is { } message)
                {
                    await HandleAsync(queue, message, cores).ConfigureAwait(false);
                }
            }
            catch (Exception e) when (Patiently.MayPass(e, stop))
            {
                State.BookTrouble();
                State.SetConnected(queue.IsConnected);
                await Task.Delay(Pause, CancellationToken.None).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch
            {
                await end.CancelAsync().ConfigureAwait(false);
                throw;
            }
        }
    }

    private async Task HandleAsync(FilmQueue queue, INatsJSMsg<byte[]> message, SemaphoreSlim cores)
    {
        if (message.Metadata is { NumDelivered: > MostDeliveries } || WorkMessage.Parse(message.Data) is not { } work)
        {
            await GiveBackAsync(c => message.AckTerminateAsync(cancellationToken: c)).ConfigureAwait(false);
            return;
        }

        var found = await Patiently.TryAsync(c => queue.FindResultAsync(work.Content, c), options.Outage, default).ConfigureAwait(false);
        if (found is not null)
        {
            State.BookKnown();
        }
        else if (await FilmOfAsync(queue, work).ConfigureAwait(false) is not { } film || ContentHash.Of(film, work.Options) != work.Content)
        {
            // Gone or changed: the batch that waits for it submits it anew.
            await GiveBackAsync(c => message.AckTerminateAsync(cancellationToken: c)).ConfigureAwait(false);
            return;
        }
        else if (await ReadAsync(film, work, cores).ConfigureAwait(false) is not { } result)
        {
            await GiveBackAsync(c => message.NakAsync(new AckOpts { NakDelay = options.Rest }, c)).ConfigureAwait(false);
            return;
        }
        else
        {
            await Patiently.TryAsync(c => queue.StoreResultAsync(work.Content, result, c), options.Outage, default).ConfigureAwait(false);
            State.BookRead();
        }

        await Patiently.TryAsync(c => message.AckAsync(new AckOpts { DoubleAck = true }, c).AsTask(), options.Outage, default).ConfigureAwait(false);
    }

    // Not said again where it is lost: the server gives the film to another after a while.
    private Task GiveBackAsync(Func<CancellationToken, ValueTask> saying)
    {
        State.BookGivenBack();
        return Patiently.OnceAsync(c => saying(c).AsTask(), default);
    }

    private async Task<FilmBytes?> FilmOfAsync(FilmQueue queue, WorkMessage work)
    {
        if (work.Film is { } carried)
        {
            return work.FilmOf(carried);
        }

        if (work.Place is null)
        {
            var content = await Patiently.TryAsync(c => queue.GetFilmAsync(work.Content, c), options.Outage, default).ConfigureAwait(false);
            return content is null ? null : work.FilmOf(content);
        }

        return filmFolder is null ? null : await FileFilms.OpenAsync(filmFolder, work.Place, default).ConfigureAwait(false);
    }

    private async Task<FilmResult?> ReadAsync(FilmBytes film, WorkMessage work, SemaphoreSlim cores)
    {
        await cores.WaitAsync().ConfigureAwait(false);
        State.Enter();
        try
        {
            return reading.Read(film, work.Options);
        }
        finally
        {
            State.Leave();
            cores.Release();
        }
    }
}
