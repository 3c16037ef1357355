namespace ElbowAssist.Imaging.Normalisation;

/// <summary>The reduced versions of a film that have been asked for, each made once. Safe to share between threads.</summary>
/// <param name="film">The film.</param>
internal sealed class FilmLevels(Radiograph film) : IDisposable
{
    private readonly Dictionary<int, FilmLevel> levels = [];

    /// <summary>The largest version whose longer side is at most so many pixels.</summary>
    public FilmLevel Within(int side) => ReducedBy(Math.Max(1, (Math.Max(film.Width, film.Height) + side - 1) / side));

    /// <summary>The version whose pixels come closest to those of a crop.</summary>
    /// <param name="scale">Crop pixels a film pixel.</param>
    public FilmLevel ForScale(double scale) =>
        ReducedBy(Math.Clamp((int)Math.Round(1 / scale), 1, Math.Max(1, Math.Min(film.Width, film.Height) / 2)));

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var level in levels.Values)
        {
            level.Dispose();
        }
    }

    private FilmLevel ReducedBy(int factor)
    {
        // Looks at one film may run side by side.
        lock (levels)
        {
            if (!levels.TryGetValue(factor, out var level))
            {
                level = FilmLevel.Reduce(film, factor);
                levels[factor] = level;
            }

            return level;
        }
    }
}
