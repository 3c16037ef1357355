using System.Diagnostics;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Pipeline;

namespace ElbowAssist.Cli.Benching;

/// <summary>Has every set of models look at every film: each film is decoded, normalised and shown to a view model once, films side by side.</summary>
/// <param name="models">Models and where their answers are kept.</param>
/// <param name="stateView">Whether the models are told the view.</param>
/// <param name="threads">Films side by side, each on one thread.</param>
internal sealed class AnswerRun(IReadOnlyList<(OpenModels Models, AnswerStore Store)> models, bool stateView, int threads)
{
    /// <summary>Answers what has not been answered yet.</summary>
    /// <returns>What it took.</returns>
    public RunCost Run(IReadOnlyList<LabelledFilm> films, CancellationToken cancellation)
    {
        var open = films.Where(f => models.Any(m => !m.Store.Has(f))).ToList();
        var before = GC.GetTotalAllocatedBytes();
        var started = Stopwatch.GetTimestamp();
        using var progress = new BenchProgress(films.Count, films.Count - open.Count);
        Parallel.ForEach(
            // One film at a time for each thread, in order.
            Partitioner(open),
            new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation },
            film =>
            {
                Answer(film, cancellation);
                progress.Step();
            });
        return new RunCost(open.Count, models.Count, Stopwatch.GetElapsedTime(started), GC.GetTotalAllocatedBytes() - before);
    }

    private static System.Collections.Concurrent.OrderablePartitioner<LabelledFilm> Partitioner(List<LabelledFilm> films) =>
        System.Collections.Concurrent.Partitioner.Create(films, System.Collections.Concurrent.EnumerablePartitionerOptions.NoBuffering);

    private void Answer(LabelledFilm film, CancellationToken cancellation)
    {
        LoadedFilm loaded;
        try
        {
            loaded = LoadedFilm.Load(film.Path, FactsOf(film));
            ExpectSize(film, loaded);
        }
        catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException or UserErrorException)
        {
            foreach (var (_, store) in models.Where(m => !m.Store.Has(film)))
            {
                store.KeepUnread(film, e.Message, cancellation);
            }

            return;
        }

        using var pixels = loaded.Radiograph;
        using var looks = new FilmLooks(pixels);
        foreach (var (entrant, store) in models.Where(m => !m.Store.Has(film)))
        {
            var (proposed, reading) = entrant.Reader.ReadWithProposals(looks, OptionsOf(loaded), loaded.Decoding, cancellation);
            store.Keep(film, proposed, reading, cancellation);
        }
    }

    private static ReadOptions OptionsOf(LoadedFilm film) => new()
    {
        View = film.Facts.View,
        Side = film.Facts.Side,
        Patient = film.Facts.Patient,
        Context = film.Facts.Context,
        Statements = film.Statements,
    };

    private FilmFacts FactsOf(LabelledFilm film)
    {
        var (image, patient) = (film.Truth.Image, film.Truth.Patient);
        return new FilmFacts("data set")
        {
            RowSpacingMm = image.RowSpacingMm,
            ColumnSpacingMm = image.ColumnSpacingMm,
            AgeMonths = patient.AgeMonths,
            Sex = patient.Sex,
            Side = film.Truth.Side == Anatomy.Side.Unknown ? null : film.Truth.Side,
            View = stateView ? film.Truth.View.Name : null,
        };
    }

    private static void ExpectSize(LabelledFilm film, LoadedFilm loaded)
    {
        var (stated, found) = (film.Truth.Image, loaded.Radiograph);
        if (stated.Width != found.Width || stated.Height != found.Height)
        {
            throw new ExchangeFormatException(FormattableString.Invariant(
                $"{film.File} has {found.Width} by {found.Height} pixels, but its labels are for {stated.Width} by {stated.Height}."));
        }
    }
}

/// <summary>What a run took, over the films it still had to do.</summary>
/// <param name="Films">Films done.</param>
/// <param name="Entrants">Sets of models that looked at each.</param>
/// <param name="Time">Time on the clock.</param>
/// <param name="AllocatedBytes">Managed memory allocated.</param>
internal sealed record RunCost(int Films, int Entrants, TimeSpan Time, long AllocatedBytes);
