using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// A bound for one more value of a normal sample. With few values a plain quantile far out would be the largest of them,
/// which more than the share asked for exceed.
/// </summary>
public static class PredictionLimit
{
    /// <summary>The value that one more draw exceeds with a probability: mean + t·s·√(1 + 1/n).</summary>
    /// <param name="values">At least two values.</param>
    /// <param name="probability">Probability of exceeding it, between 0 and 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    public static double Upper(IReadOnlyList<double> values, double probability)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count < 2)
        {
            throw new ArgumentException("A prediction limit needs at least two values.", nameof(values));
        }

        var factor = StudentT.InvCDF(0, 1, values.Count - 1, 1 - probability) * Math.Sqrt(1 + (1.0 / values.Count));
        return values.Mean() + (factor * values.StandardDeviation());
    }
}
