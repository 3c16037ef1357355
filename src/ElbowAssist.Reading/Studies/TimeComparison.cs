using ElbowAssist.Anatomy;

namespace ElbowAssist.Reading.Studies;

/// <summary>Before and after, in matching views of one side only.</summary>
internal static class TimeComparison
{
    public static IEnumerable<TimeDifference> Of(IReadOnlyList<StudyFilm> films) =>
        from earlier in films
        where earlier.Side != Side.Unknown && earlier.View is View.Lateral or View.Ap
        from later in films
        where later.Side == earlier.Side && later.View == earlier.View && Occasion.Of(later.Context) > Occasion.Of(earlier.Context)
        from m in earlier.Reading.Measurements
        let before = earlier.Measured(m.Name)
        let after = later.Measured(m.Name)
        where before is not null && after is not null && before.Unit == after.Unit
        let difference = Difference.Of(after, before)
        select new TimeDifference(
            m.Name, before.Unit, earlier.Side, earlier.View, earlier.Id, later.Id, difference.Value, difference.Redraw95);
}
