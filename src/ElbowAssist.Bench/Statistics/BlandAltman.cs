using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Bias and 95 % limits of agreement of two methods (Bland and Altman, Lancet 1986;327:307–310), with the approximate 95 %
/// intervals given there: standard errors s/√n of the bias and s·√(1/n + 1.96²/(2(n − 1))) of a limit (Stat Methods Med Res
/// 1999;8:135–160), times Student's t.
/// </summary>
/// <param name="Count">Number of pairs.</param>
/// <param name="Bias">Mean difference.</param>
/// <param name="StandardDeviation">Standard deviation of the differences, n − 1.</param>
/// <param name="LowerLimit">Bias − 1.96 standard deviations.</param>
/// <param name="UpperLimit">Bias + 1.96 standard deviations.</param>
public sealed record BlandAltman(int Count, double Bias, double StandardDeviation, double LowerLimit, double UpperLimit)
{
    private const double Normal95 = 1.96;

    /// <summary>Half the width of the 95 % interval of the bias.</summary>
    public double BiasMargin => T * StandardDeviation / Math.Sqrt(Count);

    /// <summary>Half the width of the 95 % interval of either limit.</summary>
    public double LimitMargin => T * StandardDeviation * Math.Sqrt((1.0 / Count) + (Normal95 * Normal95 / (2 * (Count - 1))));

    private double T => StudentT.InvCDF(0, 1, Count - 1, 0.975);

    /// <summary>Agreement of paired values.</summary>
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
        return new BlandAltman(first.Count, bias, sd, bias - (Normal95 * sd), bias + (Normal95 * sd));
    }
}
