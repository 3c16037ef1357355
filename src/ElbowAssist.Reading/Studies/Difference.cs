namespace ElbowAssist.Reading.Studies;

/// <summary>The difference of two measured values whose layings are independent.</summary>
internal static class Difference
{
    /// <summary>
    /// Value and interval of first minus second. Half-widths add in quadrature, side by side, as independent errors do.
    /// </summary>
    public static (double Value, Interval Redraw95) Of(Measurement first, Measurement second)
    {
        var (a, b) = (first.Value!.Value, second.Value!.Value);
        var (ai, bi) = (first.Redraw95!.Value, second.Redraw95!.Value);
        var down = double.Hypot(a - ai.Low, bi.High - b);
        var up = double.Hypot(ai.High - a, b - bi.Low);
        return (a - b, new(a - b - down, a - b + up));
    }

    /// <summary>Where an interval lies against a limit of the absolute difference.</summary>
    public static DifferenceState Against(Interval interval, double? limit) => limit switch
    {
        null => DifferenceState.NoLimit,
        { } l when interval.Low > l || interval.High < -l => DifferenceState.BeyondLimit,
        { } l when interval.High <= l && interval.Low >= -l => DifferenceState.LimitNotReached,
        _ => DifferenceState.EitherSideOfLimit,
    };
}
