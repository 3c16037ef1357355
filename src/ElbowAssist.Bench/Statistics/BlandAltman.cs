using MathNet.Numerics.Statistics;

namespace ElbowAssist.Bench.Statistics;

/// <summary>Agreement of two methods on the same objects (Bland and Altman, Lancet 1986;i:307–310).</summary>
/// <param name="Bias">Mean of the differences, first minus second.</param>
/// <param name="StandardDeviation">Standard deviation of the differences, n − 1.</param>
/// <param name="LowerLimit">Bias − 1.96 standard deviations.</param>
/// <param name="UpperLimit">Bias + 1.96 standard deviations.</param>
public sealed record BlandAltman(double Bias, double StandardDeviation, double LowerLimit, double UpperLimit)
{
    /// <summary>The limits of agreement of paired values.</summary>
    /// <exception cref="ArgumentException">The lists differ in length or hold fewer than two pairs.</exception>
    public static BlandAltman Of(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (first.Count != second.Count || first.Count < 2)
        {
            throw new ArgumentException("Two lists of equal length with at least two values are needed.", nameof(second));
        }

        var differences = first.Zip(second, (a, b) => a - b).ToArray();
        var bias = differences.Mean();
        var sd = differences.StandardDeviation();
        return new BlandAltman(bias, sd, bias - (1.96 * sd), bias + (1.96 * sd));
    }
}
