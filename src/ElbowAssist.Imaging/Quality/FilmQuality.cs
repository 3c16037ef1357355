using ElbowAssist.Imaging.Normalisation;

namespace ElbowAssist.Imaging.Quality;

/// <summary>Figures of image quality, taken in the exposed field. They are figures; limits are the caller's.</summary>
public sealed record FilmQuality
{
    /// <summary>Standard deviation of the noise over the grey range of the field.</summary>
    public required double Noise { get; init; }

    /// <summary>Blur from 0 (crisp) to 1 (nothing fine left), of the film at a reduced size of at most 1024 pixels.</summary>
    public required double Blur { get; init; }

    /// <summary>Grey range of the field over the whole range of 16 bits, 0 to 1.</summary>
    public required double Contrast { get; init; }

    /// <summary>Share of the field at the brightest value there is, bone being bright: detail that is burned out.</summary>
    public required double ClippedBright { get; init; }

    /// <summary>Share of the field at the darkest value there is, bone being bright; saturated air is usual.</summary>
    public required double ClippedDark { get; init; }

    /// <summary>Shorter side of the field in pixels.</summary>
    public required int ShortSide { get; init; }

    /// <summary>Exposed field over film area, 0 to 1.</summary>
    public required double ExposedShare { get; init; }

    internal static FilmQuality Of(NormalisedFilm film, FilmLevels levels)
    {
        var (field, window) = (film.Field, film.Window);
        var dark = film.Polarity.BoneIsDark;
        return new FilmQuality
        {
            Noise = NoiseFigure.StandardDeviation(film.Film, field) / window.Range,
            Blur = BlurFigure.Of(levels),
            Contrast = (window.High - window.Low) / 65535.0,
            ClippedBright = dark ? window.AtLowest : window.AtHighest,
            ClippedDark = dark ? window.AtHighest : window.AtLowest,
            ShortSide = Math.Min(field.Width, field.Height),
            ExposedShare = (double)field.Width * field.Height / ((double)film.Film.Width * film.Film.Height),
        };
    }
}
