namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Mean gap between stated probability and observed frequency over bins of equal width, weighted by the bin counts
/// (Naeini, Cooper and Hauskrecht, AAAI 2015).
/// </summary>
public static class ExpectedCalibrationError
{
    /// <summary>The error over pairs of stated probability and outcome; NaN without pairs.</summary>
    /// <param name="forecasts">Stated probability from 0 to 1 and whether it came true.</param>
    /// <param name="bins">Number of bins.</param>
    public static double Of(IReadOnlyList<(double Probability, bool Occurred)> forecasts, int bins = 10)
    {
        ArgumentNullException.ThrowIfNull(forecasts);
        if (forecasts.Count == 0)
        {
            return double.NaN;
        }

        var stated = new double[bins];
        var occurred = new double[bins];
        foreach (var (probability, happened) in forecasts)
        {
            var bin = Math.Clamp((int)(probability * bins), 0, bins - 1);
            stated[bin] += probability;
            occurred[bin] += happened ? 1 : 0;
        }

        return stated.Zip(occurred, (s, o) => Math.Abs(s - o)).Sum() / forecasts.Count;
    }
}
