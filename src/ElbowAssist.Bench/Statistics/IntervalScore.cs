namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Sharpness and calibration of an interval in one figure: its width, and 2/α times the distance by which it misses
/// (Gneiting and Raftery, J Am Stat Assoc 2007;102:359–378, equation 43). Smaller is better.
/// </summary>
public static class IntervalScore
{
    /// <summary>The score of one central interval.</summary>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end.</param>
    /// <param name="truth">What came out.</param>
    /// <param name="alpha">Share that may miss, e.g. 0.05.</param>
    public static double Of(double low, double high, double truth, double alpha = 0.05) =>
        high - low + (2 / alpha * (Math.Max(0, low - truth) + Math.Max(0, truth - high)));
}
