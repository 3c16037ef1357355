using ElbowAssist.Anatomy;

namespace ElbowAssist.Reading.Studies;

/// <summary>Measurements held against the other side, where films of both were given. The other side is never asked for.</summary>
public static class SideComparison
{
    /// <summary>Limit in degrees of the side difference of the Baumann angle: a choice of this project.</summary>
    public const double BaumannLimit = 5;

    internal static IReadOnlyList<SideDifference> Between(IReadOnlyList<StudyFilm> films, Side asked)
    {
        var first = asked == Side.Unknown ? Side.Left : asked;
        var second = first == Side.Left ? Side.Right : Side.Left;
        return
        [
            .. from a in films
               where a.Side == first
               from b in films
               where b.Side == second && b.View == a.View && b.View != View.Unknown && b.View != View.Oblique
               from m in a.Reading.Measurements
               let inA = a.Measured(m.Name)
               let inB = b.Measured(m.Name)
               where inA is not null && inB is not null && inA.Unit == inB.Unit
               select Compare(a, inA, b, inB),
        ];
    }

    private static SideDifference Compare(StudyFilm a, Measurement inA, StudyFilm b, Measurement inB)
    {
        var (value, interval) = Difference.Of(inA, inB);
        double? limit = inA.Name == "baumann-angle" ? BaumannLimit : null;
        return new(inA.Name, inA.Unit, a.Id, b.Id, value, interval, limit, Difference.Against(interval, limit));
    }
}
