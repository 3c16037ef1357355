using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Whether the picture holds enough to look at: size, contrast, structure, and grey values.</summary>
internal static class QualityStage
{
    public static IReadOnlyList<AdequacyCheck> Check(NormalisedFilm film, AdequacyLimits limits)
    {
        var quality = film.Quality();
        return
        [
            Checks.AtLeast(limits, "image.short-side", quality.ShortSide, FilmReasons.ImageUnreadable),
            Checks.AtLeast(limits, "image.contrast", quality.Contrast, FilmReasons.ImageUnreadable),
            Checks.AtMost(limits, "image.noise", quality.Noise, FilmReasons.ImageUnreadable),
            Checks.AtMost(limits, "image.blur", quality.Blur, FilmReasons.ImageUnreadable),
            Checks.AtMost(limits, "image.coloured-share", film.Film.Facts.ColouredShare, FilmReasons.NotARadiograph),
        ];
    }
}
