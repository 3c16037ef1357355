using System.Diagnostics;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Pipeline.Stages;

namespace ElbowAssist.Pipeline;

/// <summary>
/// A film for several readers, one after another: it is normalised once, its quality is taken once, and readers with the
/// same view model and passes share what that model says. A reading is what it would be alone, and its timing names what a
/// shared stage took when it was run. For one thread; the radiograph stays the caller's to dispose.
/// </summary>
/// <param name="radiograph">The film.</param>
public sealed class FilmLooks(Radiograph radiograph) : IDisposable
{
    private readonly Dictionary<(string Stage, string Model, object? Passes), (object Result, TimeSpan Time)> done = [];
    private NormalisedFilm? film;

    /// <summary>The film.</summary>
    public Radiograph Radiograph { get; } = radiograph ?? throw new ArgumentNullException(nameof(radiograph));

    /// <inheritdoc/>
    public void Dispose() => film?.Dispose();

    internal NormalisedFilm Film(StageClock clock) => Once("normalise", "", null, clock, () => film = NormalisedFilm.Of(Radiograph));

    internal IReadOnlyDictionary<string, double> Figures(StageClock clock)
    {
        var normalised = Film(clock);
        return Once("quality", "", null, clock, () => QualityStage.Figures(normalised));
    }

    internal ViewLook View(ViewModel model, IReadOnlyList<CropPass> passes, int threads, StageClock clock, CancellationToken cancellation)
    {
        var normalised = Film(clock);
        return Once("view", model.Folder.Sha256, passes, clock, () => new ViewStage(model, passes, threads).Run(normalised, cancellation));
    }

    private T Once<T>(string stage, string model, object? passes, StageClock clock, Func<T> look)
        where T : notnull
    {
        if (!done.TryGetValue((stage, model, passes), out var had))
        {
            var started = Stopwatch.GetTimestamp();
            had = (look(), Stopwatch.GetElapsedTime(started));
            done[(stage, model, passes)] = had;
        }

        clock.Book(stage, had.Time);
        return (T)had.Result;
    }
}
