using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Whether the picture holds enough to look at: size, contrast, structure, and grey values.</summary>
internal static class QualityStage
{
    /// <summary>The figures by limit name.</summary>
    public static IReadOnlyDictionary<string, double> Figures(NormalisedFilm film)
    {
        var quality = film.Quality();
        return new Dictionary<string, double>(StringComparer.Ordinal)
        {
            ["image.short-side"] = quality.ShortSide,
            ["image.contrast"] = quality.Contrast,
            ["image.noise"] = quality.Noise,
            ["image.blur"] = quality.Blur,
            ["image.coloured-share"] = film.Film.Facts.ColouredShare,
        };
    }

    public static IReadOnlyList<AdequacyCheck> Check(IReadOnlyDictionary<string, double> figures, AdequacyLimits limits)
    {
        AdequacyCheck AtLeast(string name, string reason) => Checks.AtLeast(limits, name, figures[name], reason);
        AdequacyCheck AtMost(string name, string reason) => Checks.AtMost(limits, name, figures[name], reason);
        return
        [
            AtLeast("image.short-side", FilmReasons.ImageUnreadable),
            AtLeast("image.contrast", FilmReasons.ImageUnreadable),
            AtMost("image.noise", FilmReasons.ImageUnreadable),
            AtMost("image.blur", FilmReasons.ImageUnreadable),
            AtMost("image.coloured-share", FilmReasons.NotARadiograph),
        ];
    }
}
