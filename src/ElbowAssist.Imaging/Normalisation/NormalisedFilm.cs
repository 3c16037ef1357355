using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Native;
using ElbowAssist.Imaging.Quality;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>
/// A radiograph with its exposed field, grey window and polarity, from which standardised crops are taken. Holds the
/// reduced versions it has made; one instance serves one reading, whose crops may be taken side by side. Dispose it to let the next film
/// have the memory of the reduced versions, which one of the other polarity shares.
/// </summary>
public sealed class NormalisedFilm : IDisposable
{
    /// <summary>Longer side, at most, of the reduced film on which field and polarity are found.</summary>
    internal const int OverviewSide = 256;

    private readonly FilmLevels levels;

    private NormalisedFilm(Radiograph film, FilmLevels levels, ExposedField field, GreyWindow window, Polarity polarity)
    {
        Film = film;
        this.levels = levels;
        Field = field;
        Window = window;
        Polarity = polarity;
    }

    /// <summary>The radiograph.</summary>
    public Radiograph Film { get; }

    /// <summary>The exposed field.</summary>
    public ExposedField Field { get; }

    /// <summary>The grey window of the field.</summary>
    public GreyWindow Window { get; }

    /// <summary>Whether bone is dark.</summary>
    public Polarity Polarity { get; private init; }

    /// <summary>Analyses a radiograph.</summary>
    public static NormalisedFilm Of(Radiograph film)
    {
        ArgumentNullException.ThrowIfNull(film);
        NativeLibraries.EnsureLoadable();
        var reduced = new FilmLevels(film);
        var overview = reduced.Within(OverviewSide);
        var field = ExposedField.Find(overview, film.Width, film.Height);
        return new NormalisedFilm(film, reduced, field, GreyWindow.Of(film, field), Polarity.Of(overview, field, film.Facts.BoneIsDark));
    }

    /// <summary>The same film with the other polarity, sharing what has been reduced so far.</summary>
    public NormalisedFilm Inverted() => new(Film, levels, Field, Window, new Polarity(!Polarity.BoneIsDark, -Polarity.Score));

    /// <inheritdoc/>
    public void Dispose() => levels.Dispose();

    /// <summary>Image-quality figures of the exposed field.</summary>
    public FilmQuality Quality() => FilmQuality.Of(this, levels);

    /// <summary>How bone is exposed about places on it, at the scale of a crop; null where too little of the film lies there.</summary>
    /// <param name="filmToCrop">The pose in which the elbow is looked at.</param>
    /// <param name="places">Places on bone, film pixels.</param>
    /// <param name="radius">How far about each place is looked, film pixels.</param>
    public BoneExposure? ExposureOfBone(Similarity filmToCrop, IReadOnlyList<Point> places, double radius)
    {
        ArgumentNullException.ThrowIfNull(places);
        return BoneExposure.Of(levels.ForScale(filmToCrop.Scale), Polarity.BoneIsDark, places, radius);
    }

    /// <summary>
    /// Writes a crop after the recipe <c>standardised-crop</c>, version 1: sampled with antialiasing; the 0.5 and 99.5
    /// percentiles of the exposed field in the crop to 0…1, bone bright; 0 outside the film; then (x − mean) / (standard deviation + 0.03) over the crop.
    /// </summary>
    /// <param name="filmToCrop">From film pixels to crop pixels, both continuous with (0,0) the top-left corner.</param>
    /// <param name="width">Columns of the crop.</param>
    /// <param name="height">Rows of the crop.</param>
    /// <param name="target">Row by row; at least width × height long.</param>
    /// <exception cref="ArgumentException">The target is too short.</exception>
    public void StandardisedCrop(Similarity filmToCrop, int width, int height, Span<float> target) =>
        CropSampler.Standardised(this, levels.ForScale(filmToCrop.Scale), filmToCrop, width, height, target);

    /// <summary>The similarity that fits the whole film into the middle of a square, aspect kept.</summary>
    public Similarity WholeFilmTo(int side)
    {
        var scale = side / (double)Math.Max(Film.Width, Film.Height);
        return new Similarity(
            scale, 0, new Vector((side - (Film.Width * scale)) / 2, (side - (Film.Height * scale)) / 2), Mirrored: false);
    }
}
