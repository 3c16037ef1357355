using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading.Studies;

/// <summary>Names the views a study lacks. The uninjured side lacks nothing.</summary>
internal static class ViewsLacking
{
    public static IEnumerable<MissingView> In(IReadOnlyList<StudyFilm> films, Side injured, ReaderMarks marks)
    {
        var sides = films.Select(f => f.Side).Distinct().Where(s => injured == Side.Unknown || s == injured).ToList();
        foreach (var side in sides)
        {
            var own = films.Where(f => f.Side == side).ToList();
            foreach (var occasion in own.GroupBy(f => Occasion.Of(f.Context)))
            {
                foreach (var view in new[] { View.Lateral, View.Ap }.Where(v => occasion.All(f => f.View != v)))
                {
                    yield return new(
                        $"view.{Code(view)}", side,
                        $"No {Words(view)} of {Elbow(side)}{When(occasion.First().Context)}: what only it shows cannot be judged.");
                }
            }
        }

        var about = injured != Side.Unknown ? injured : sides is [var only] ? only : Side.Unknown;
        if (marks.Injuries.Contains(SuspectedInjury.LateralCondyle) && films.All(f => f.View != View.Oblique))
        {
            yield return new("view.internal-oblique", about,
                $"Lateral condyle suspected and no internal oblique view of {Elbow(about)}: it shows the metaphyseal flake best.");
        }

        if (marks.Injuries.Contains(SuspectedInjury.UlnarShaft) || marks.Injuries.Contains(SuspectedInjury.RadialHeadDislocation))
        {
            yield return new("view.forearm", about,
                $"No film of the whole forearm of {Elbow(about)} in this study: the bow of the ulna cannot be judged on an elbow film.");
        }
    }

    private static string Code(View view) => view == View.Lateral ? "lateral" : "ap";

    private static string Words(View view) => view == View.Lateral ? "lateral view" : "AP view";

    private static string Elbow(Side side) => side switch
    {
        Side.Left => "the left elbow",
        Side.Right => "the right elbow",
        _ => "the elbow",
    };

    private static string When(FilmContext context) => context switch
    {
        FilmContext.AfterReduction => " after the reduction",
        FilmContext.Cast => " in the cast",
        FilmContext.Fixation => " with the metal",
        FilmContext.FollowUp => " at follow-up",
        _ => "",
    };
}
