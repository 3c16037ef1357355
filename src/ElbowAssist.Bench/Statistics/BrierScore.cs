namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Mean squared distance between stated probabilities and what came out, summed over the classes of each forecast
/// (Brier, Mon Weather Rev 1950;78:1–3): 0 is best, 2 worst.
/// </summary>
public static class BrierScore
{
    /// <summary>The score; NaN without forecasts.</summary>
    /// <param name="forecasts">For each forecast, stated probability and whether it came true, class by class.</param>
    public static double Of(IReadOnlyList<IReadOnlyList<(double Probability, bool Occurred)>> forecasts)
    {
        ArgumentNullException.ThrowIfNull(forecasts);
        return forecasts.Count == 0
            ? double.NaN
            : forecasts.Average(f => f.Sum(c => Math.Pow(c.Probability - (c.Occurred ? 1 : 0), 2)));
    }
}
