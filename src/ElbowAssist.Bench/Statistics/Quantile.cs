namespace ElbowAssist.Bench.Statistics;

/// <summary>Sample quantiles by linear interpolation of the order statistics (definition 7 of Hyndman and Fan, Am Stat 1996;50:361–365).</summary>
public static class Quantile
{
    /// <summary>The quantile of an unordered sample; NaN for an empty one.</summary>
    /// <param name="sample">Finite values.</param>
    /// <param name="probability">From 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability lies outside 0 to 1.</exception>
    public static double Of(IEnumerable<double> sample, double probability)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var ordered = sample.ToArray();
        Array.Sort(ordered);
        return OfOrdered(ordered, probability);
    }

    /// <summary>The quantile of a sample in ascending order; NaN for an empty one.</summary>
    /// <param name="ordered">Finite values, ascending.</param>
    /// <param name="probability">From 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability lies outside 0 to 1.</exception>
    public static double OfOrdered(ReadOnlySpan<double> ordered, double probability)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(probability, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        if (ordered.IsEmpty)
        {
            return double.NaN;
        }

        var position = probability * (ordered.Length - 1);
        var below = (int)Math.Floor(position);
        var above = Math.Min(below + 1, ordered.Length - 1);
        return ordered[below] + ((position - below) * (ordered[above] - ordered[below]));
    }

    /// <summary>The median of an unordered sample; NaN for an empty one.</summary>
    public static double Median(IEnumerable<double> sample) => Of(sample, 0.5);
}
