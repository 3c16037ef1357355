using ElbowAssist.Anatomy;

namespace ElbowAssist.Reading.Studies;

/// <summary>The order in time that contexts imply. Follow-up films come last; a film without context counts as acute.</summary>
internal static class Occasion
{
    public static int Of(FilmContext context) => context switch
    {
        FilmContext.Unknown or FilmContext.Acute => 0,
        FilmContext.AfterReduction => 1,
        FilmContext.Cast or FilmContext.Fixation => 2,
        FilmContext.FollowUp => 3,
        _ => throw new ArgumentOutOfRangeException(nameof(context)),
    };
}
