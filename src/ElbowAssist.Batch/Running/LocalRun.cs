using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Results;

namespace ElbowAssist.Batch.Running;

/// <summary>A batch in this process, on as many threads as are given.</summary>
public static class LocalRun
{
    /// <summary>Reads every film that has no result yet. When stopped, the films in hand are finished first.</summary>
    /// <param name="source">The films.</param>
    /// <param name="options">Facts given as options, as a sidecar.</param>
    /// <param name="reading">Reads them.</param>
    /// <param name="results">Takes the results.</param>
    /// <param name="pace">Follows the run.</param>
    /// <param name="threads">Films read at the same time.</param>
    /// <param name="stop">Stops.</param>
    /// <exception cref="BatchException">The source cannot be listed or the results cannot be written.</exception>
    public static async Task<BatchOutcome> RunAsync(
        IFilmSource source, ReadOnlyMemory<byte> options, IFilmReading reading, ResultsFile results, Pace pace, int threads, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(results);
        ArgumentNullException.ThrowIfNull(pace);
        var tally = new Tally(pace);
        var stopped = false;
        try
        {
            await Parallel.ForEachAsync(
                source.ListAsync(stop),
                new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = stop },
                async (film, _) => await ReadAsync(film).ConfigureAwait(false)).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            stopped = true;
        }

        return tally.Outcome(stopped);

        async Task ReadAsync(ListedFilm listed)
        {
            tally.Listed();
            if (await source.OpenAsync(listed, CancellationToken.None).ConfigureAwait(false) is not { } film)
            {
                tally.NotOpened(listed.Name);
                return;
            }

            var content = ContentHash.Of(film, options);
            if (results.Holds(content, listed.Name))
            {
                tally.Before();
            }
            else if (reading.Read(film, options) is not { } result)
            {
                tally.GivenUp(listed.Name);
            }
            else if (results.Add(content, listed.Name, result))
            {
                tally.Now();
            }
        }
    }
}
