using System.Security.Cryptography;
using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;
using NATS.Client.Core;

namespace ElbowAssist.Batch.Queue;

/// <summary>
/// A batch read by workers: submits the films, writes their results as they come, and looks again at every film whose
/// result is late. One that is neither stored nor queued any more is submitted anew.
/// </summary>
/// <param name="options">The servers.</param>
/// <param name="recipe">Models and version; only workers of the same take the work.</param>
/// <param name="clock">Clock for the looks at what is late.</param>
public sealed class QueueRun(QueueOptions options, Recipe recipe, TimeProvider clock)
{
    private const int MostRounds = 3;

    private readonly string run = RandomNumberGenerator.GetHexString(16, lowercase: true);

    /// <summary>
    /// Runs until every film has its result. When stopped, nothing more is submitted; what is queued is read nevertheless,
    /// and the next run finds its results.
    /// </summary>
    /// <param name="source">The films.</param>
    /// <param name="stated">Facts given as options, as a sidecar.</param>
    /// <param name="results">Takes the results.</param>
    /// <param name="pace">Follows the run.</param>
    /// <param name="stop">Stops.</param>
    /// <exception cref="BatchException">The source cannot be listed, the servers cannot be used, or the results cannot be written.</exception>
    public async Task<BatchOutcome> RunAsync(IFilmSource source, ReadOnlyMemory<byte> stated, ResultsFile results, Pace pace, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(results);
        ArgumentNullException.ThrowIfNull(pace);
        var tally = new Tally(pace);
        using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
        await using var queue = await QueueSetup.ForBatchAsync(options, recipe, stop).ConfigureAwait(false);
        using var desk = new ResultDesk(results, tally, options.Window, queue);
        var watching = WatchAsync(queue, desk, end.Token);
        var looking = LookAsync(queue, desk, source, stated, end.Token);
        var submitting = SubmitAllAsync(queue, desk, source, stated, tally, end.Token);
        try
        {
            // Watching and looking end by themselves only where something is wrong.
            await await Task.WhenAny(submitting, watching, looking).ConfigureAwait(false);
            while (!desk.IsEmpty)
            {
                await await Task.WhenAny(desk.SomethingCameAsync(end.Token), watching, looking).ConfigureAwait(false);
            }

            return tally.Outcome(stopped: false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return tally.Outcome(stopped: true);
        }
        catch (Exception e) when (Patiently.MayPass(e, stop))
        {
            throw new BatchException($"The server at {options.Servers} does not take the work ({(e is OperationCanceledException ? "no answer" : e.Message.TrimEnd('.'))}); check it and run the same command again to go on.", e);
        }
        finally
        {
            await end.CancelAsync().ConfigureAwait(false);
            await Task.WhenAll(submitting, watching, looking).WaitAsync(Patiently.LongestTry, clock, CancellationToken.None).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task SubmitAllAsync(
        FilmQueue queue, ResultDesk desk, IFilmSource source, ReadOnlyMemory<byte> stated, Tally tally, CancellationToken end)
    {
        // Several at a time, so that the way to archive and servers is not waited for film by film.
        var several = new ParallelOptions { MaxDegreeOfParallelism = 8, CancellationToken = end };
        await Parallel.ForEachAsync(source.ListAsync(end), several, async (listed, cancellation) =>
        {
            // Its own token: where one film fails, those that wait for room must not wait for ever.
            tally.Listed();
            if (await source.OpenAsync(listed, cancellation).ConfigureAwait(false) is not { } film)
            {
                tally.NotOpened(listed.Name);
                return;
            }

            var submitted = new Submitted(listed, ContentHash.Of(film, stated));
            if (desk.Holds(submitted.Content, listed.Name))
            {
                tally.Before();
                return;
            }

            await desk.EnterAsync(submitted, cancellation).ConfigureAwait(false);
            var found = await Patiently.TryAsync(c => queue.FindResultAsync(submitted.Content, c), options.Outage, cancellation).ConfigureAwait(false);
            await (found is not null
                ? desk.TakeAsync(submitted.Content, found, cancellation)
                : SubmitAsync(queue, submitted, film, stated, cancellation)).ConfigureAwait(false);
        }).ConfigureAwait(false);
    }

    private async Task SubmitAsync(FilmQueue queue, Submitted submitted, FilmBytes film, ReadOnlyMemory<byte> stated, CancellationToken cancellation)
    {
        var carried = !options.InPlace && film.Content.Length + (film.Sidecar?.Length ?? 0) <= WorkMessage.MostCarried;
        submitted.Stored = !options.InPlace && !carried;
        if (submitted.Stored)
        {
            await Patiently.TryAsync(c => queue.PutFilmAsync(submitted.Content, film.Content, c), options.Outage, cancellation).ConfigureAwait(false);
        }

        var message = new WorkMessage(
            submitted.Content, film.FileName, stated.ToArray(), film.Sidecar?.ToArray(), carried ? film.Content.ToArray() : null, options.InPlace ? submitted.Film.Name : null);
        var round = submitted.Rounds + 1;
        var id = FormattableString.Invariant($"{run}.{round}.{submitted.Content}");
        submitted.Place = await Patiently.TryAsync(c => queue.SubmitAsync(message, id, c), options.Outage, cancellation).ConfigureAwait(false);
        submitted.Since = clock.GetTimestamp();
        submitted.Rounds = round;
    }

    private async Task WatchAsync(FilmQueue queue, ResultDesk desk, CancellationToken cancellation)
    {
        while (true)
        {
            try
            {
                await foreach (var (content, result) in queue.WatchAsync(cancellation).ConfigureAwait(false))
                {
                    await desk.TakeAsync(content, result, cancellation).ConfigureAwait(false);
                }
            }
            catch (Exception e) when (Patiently.MayPass(e, cancellation))
            {
                // Servers are away; what comes meanwhile is found by looking.
            }

            await Task.Delay(options.Rest, clock, cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Looks after every film whose result is late: watching may have missed it, or its message may be lost.</summary>
    private async Task LookAsync(FilmQueue queue, ResultDesk desk, IFilmSource source, ReadOnlyMemory<byte> stated, CancellationToken cancellation)
    {
        var (answered, lost) = (clock.GetTimestamp(), false);
        while (true)
        {
            await Task.Delay(options.Rest, clock, cancellation).ConfigureAwait(false);
            try
            {
                if (lost)
                {
                    await Patiently.OnceAsync(c => queue.MendAsync(options, c), cancellation).ConfigureAwait(false);
                }

                // What no worker has taken yet is where it was put: one answer tells it of all.
                var (behind, last) = await Patiently.OnceAsync(queue.NotTakenAsync, cancellation).ConfigureAwait(false);
                foreach (var late in desk.Waiting().Where(w => w.Rounds > 0 && (w.Place <= behind || w.Place > last) && clock.GetElapsedTime(w.Since) > options.Rest))
                {
                    await Patiently.OnceAsync(c => LookAtAsync(queue, desk, source, stated, late, c), cancellation).ConfigureAwait(false);
                }

                (answered, lost) = (clock.GetTimestamp(), false);
            }
            catch (Exception e) when (Patiently.MayPass(e, cancellation) && clock.GetElapsedTime(answered) < options.Outage)
            {
                lost = true; // servers are away, or have lost what was set up there; all are looked at again in a while
            }
        }
    }

    private async Task LookAtAsync(FilmQueue queue, ResultDesk desk, IFilmSource source, ReadOnlyMemory<byte> stated, Submitted late, CancellationToken cancellation)
    {
        late.Since = clock.GetTimestamp();
        if (await queue.FindResultAsync(late.Content, cancellation).ConfigureAwait(false) is { } found)
        {
            await desk.TakeAsync(late.Content, found, cancellation).ConfigureAwait(false);
            return;
        }

        // Acknowledged between the two looks: its result must be there now.
        if (await queue.IsQueuedAsync(late.Place, cancellation).ConfigureAwait(false) ||
            await queue.FindResultAsync(late.Content, cancellation).ConfigureAwait(false) is not null)
        {
            return;
        }

        // A worker that opens films in place gives back what is gone or has become another film.
        var film = await source.OpenAsync(late.Film, cancellation).ConfigureAwait(false);
        await (film is null ? desk.GiveUpAsync(late.Content, static (t, f) => t.NotOpened(f), cancellation)
            : ContentHash.Of(film, stated) != late.Content ? desk.GiveUpAsync(late.Content, static (t, f) => t.Changed(f), cancellation)
            : late.Rounds >= MostRounds ? desk.GiveUpAsync(late.Content, static (t, f) => t.GivenUp(f), cancellation)
            : SubmitAsync(queue, late, film, stated, cancellation)).ConfigureAwait(false);
    }
}
