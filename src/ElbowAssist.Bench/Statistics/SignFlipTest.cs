using MathNet.Numerics.Random;

namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Permutation test of a mean paired difference by turning the signs of whole patients (Fisher, The Design of Experiments,
/// 1935, section 21): every choice of signs for few patients, seeded draws for more.
/// </summary>
public static class SignFlipTest
{
    private const int MostExact = 14;

    /// <summary>The two-sided probability; NaN without differences.</summary>
    /// <param name="differences">One difference per patient.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <param name="draws">Draws where there are too many choices to count.</param>
    public static double TwoSided(IReadOnlyList<double> differences, int seed, int draws = 10_000)
    {
        ArgumentNullException.ThrowIfNull(differences);
        if (differences.Count == 0)
        {
            return double.NaN;
        }

        // A choice that differs by rounding only is as far out as the one observed.
        var observed = Math.Abs(differences.Sum()) * (1 - 1e-12);
        return differences.Count <= MostExact ? Exact(differences, observed) : Drawn(differences, observed, new MersenneTwister(seed, threadSafe: false), draws);
    }

    private static double Exact(IReadOnlyList<double> differences, double observed)
    {
        var choices = 1 << differences.Count;
        var asFar = 0;
        for (var choice = 0; choice < choices; choice++)
        {
            double sum = 0;
            for (var i = 0; i < differences.Count; i++)
            {
                sum += (choice >> i & 1) == 0 ? differences[i] : -differences[i];
            }

            asFar += Math.Abs(sum) >= observed ? 1 : 0;
        }

        return (double)asFar / choices;
    }

    private static double Drawn(IReadOnlyList<double> differences, double observed, MersenneTwister random, int draws)
    {
        var asFar = 0;
        for (var draw = 0; draw < draws; draw++)
        {
            double sum = 0;
            for (var i = 0; i < differences.Count; i++)
            {
                sum += random.Next(2) == 0 ? differences[i] : -differences[i];
            }

            asFar += Math.Abs(sum) >= observed ? 1 : 0;
        }

        // The observed choice is one of those that can be drawn.
        return (asFar + 1.0) / (draws + 1);
    }
}
