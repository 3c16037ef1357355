using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading.Studies;

/// <summary>What lateral and AP of one side and one time say together.</summary>
internal static class CrossViewCheck
{
    private const double Edge = 0.5;

    public static IEnumerable<CrossViewNote> Of(IReadOnlyList<StudyFilm> films) =>
        films.Where(f => f.Side != Side.Unknown || films.All(o => o.Side == Side.Unknown))
            .GroupBy(f => (f.Side, Occasion.Of(f.Context)))
            .SelectMany(g => Radiocapitellar([.. g]));

    private static IEnumerable<CrossViewNote> Radiocapitellar(IReadOnlyList<StudyFilm> films)
    {
        var lateral = films.FirstOrDefault(f => f.View == View.Lateral);
        var ap = films.FirstOrDefault(f => f.View == View.Ap);
        if (lateral is null || ap is null)
        {
            yield break;
        }

        var onLateral = lateral.Measured(RadiocapitellarRule.LateralNeck) ?? lateral.Measured(RadiocapitellarRule.LateralShaft);
        var onAp = ap.Measured(RadiocapitellarRule.ApNeck) ?? ap.Measured(RadiocapitellarRule.ApShaft);
        string[] both = [lateral.Id, ap.Id];
        switch (Misses(onLateral), Misses(onAp))
        {
            case (true, false):
                yield return new("cross-view.radiocapitellar-lateral-miss",
                    "The radiocapitellar line misses the capitellum on the lateral and crosses it on the AP. One view that misses is enough; the AP does not settle it.", both);
                break;
            case (false, true):
                yield return new("cross-view.radiocapitellar-ap-miss",
                    "The radiocapitellar line crosses the capitellum on the lateral and misses it on the AP. The AP counts little, more so in children; look at the radial head again.", both);
                break;
            case (true, true):
                yield return new("cross-view.radiocapitellar-both-miss",
                    "The radiocapitellar line misses the capitellum on lateral and AP.", both);
                break;
            case (null, not null):
                yield return new("cross-view.radiocapitellar-ap-only",
                    "Only the AP carries the radiocapitellar line, and alone it counts little: the alignment of the radial head is not judged.", both);
                break;
            case (null, null):
                yield return new("cross-view.radiocapitellar-none",
                    "Neither view carries the radiocapitellar line: the alignment of the radial head is not judged.", both);
                break;
            default:
                break;
        }
    }

    private static bool? Misses(Measurement? line) => line is null ? null : Math.Abs(line.Value!.Value) >= Edge;
}
