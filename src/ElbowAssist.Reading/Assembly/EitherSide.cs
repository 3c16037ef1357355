using ElbowAssist.Anatomy.Measurements;

namespace ElbowAssist.Reading.Assembly;

/// <summary>Whether a value may belong on either side of a decision limit.</summary>
internal static class EitherSide
{
    /// <summary>Reason codes; empty if the value lies on one side however it is laid.</summary>
    /// <param name="value">A value that is given.</param>
    /// <param name="kept">All values that are given on this film, by name: a withheld construction has no say.</param>
    /// <param name="limits">Decision limits for this patient, ascending.</param>
    public static IReadOnlyList<string> Reasons(
        MeasuredValue value, Dictionary<string, MeasuredValue> kept, IReadOnlyList<double> limits)
    {
        var reasons = new List<string>();
        if (value.Redraw95 is { } interval && Band(interval.Low, limits) != Band(interval.High, limits))
        {
            reasons.Add(ReasonCodes.IntervalCrossesLimit);
        }

        if (value.Definition.OtherConstruction is { } other && kept.TryGetValue(other, out var second) &&
            Band(value.Value!.Value, limits) != Band(second.Value!.Value, limits))
        {
            reasons.Add(ReasonCodes.ConstructionsDiffer);
        }

        return reasons;
    }

    private static int Band(double value, IReadOnlyList<double> limits) => limits.Count(l => value >= l);
}
