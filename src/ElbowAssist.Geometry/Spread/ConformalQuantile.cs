namespace ElbowAssist.Geometry.Spread;

/// <summary>
/// Split conformal prediction: the factor by which intervals must be stretched so that, on films exchangeable with the
/// calibration films, they hold the truth with at least the stated share (Vovk V, Gammerman A, Shafer G. Algorithmic
/// Learning in a Random World, Springer 2005). The guarantee is about those films only.
/// </summary>
public static class ConformalQuantile
{
    /// <summary>Rank k = ⌈(n + 1)·coverage⌉ of the score that is taken among n, counted from 1; above n there are too few.</summary>
    /// <param name="count">Number of calibration scores n.</param>
    /// <param name="coverage">Share to be held, e.g. 0.95.</param>
    public static int Rank(int count, double coverage) => (int)Math.Ceiling(((count + 1) * coverage) - 1e-9);

    /// <summary>The score of that rank; positive infinity where there are too few scores for the coverage.</summary>
    /// <param name="scores">Per film |error| over the half-width of its interval (or its standard deviation).</param>
    /// <param name="coverage">Share to be held, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The coverage is not between 0 and 1, or a score is not a number.</exception>
    public static double Of(ReadOnlySpan<double> scores, double coverage)
    {
        if (!(coverage > 0 && coverage < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "The coverage must lie between 0 and 1.");
        }

        var sorted = scores.ToArray();
        if (sorted.Any(double.IsNaN))
        {
            throw new ArgumentOutOfRangeException(nameof(scores), "A score is not a number.");
        }

        Array.Sort(sorted);
        var rank = Rank(sorted.Length, coverage);
        return rank > sorted.Length ? double.PositiveInfinity : sorted[rank - 1];
    }
}
