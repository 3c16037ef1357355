using MathNet.Numerics.Distributions;

namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Wilcoxon's signed-rank test of paired differences (Biometrics Bulletin 1945;1:80–83): zeros are left out, ties take mean
/// ranks; the exact distribution up to 50 differences without ties or zeros, else the normal one with the variance
/// corrected for ties and no correction for continuity.
/// </summary>
/// <param name="Count">Differences other than zero.</param>
/// <param name="Statistic">The smaller of the two rank sums.</param>
/// <param name="P">Two-sided probability; NaN without differences.</param>
public sealed record WilcoxonSignedRank(int Count, double Statistic, double P)
{
    private const int MostExact = 50;

    /// <summary>The test.</summary>
    /// <param name="differences">One difference per patient.</param>
    public static WilcoxonSignedRank Of(IReadOnlyList<double> differences)
    {
        ArgumentNullException.ThrowIfNull(differences);
        var kept = differences.Where(d => d != 0).ToList();
        if (kept.Count == 0)
        {
            return new WilcoxonSignedRank(0, 0, double.NaN);
        }

        var (positive, ties, tied) = RankSum(kept);
        var n = kept.Count;
        var total = n * (n + 1) / 2.0;
        var statistic = Math.Min(positive, total - positive);
        if (n <= MostExact && !tied && kept.Count == differences.Count)
        {
            return new WilcoxonSignedRank(n, statistic, Math.Min(1, 2 * ExactLower(n, (int)statistic)));
        }

        var deviation = Math.Sqrt((n * (n + 1.0) * ((2 * n) + 1) / 24) - (ties / 48));
        return new WilcoxonSignedRank(n, statistic, 2 * Normal.CDF(0, 1, (statistic - (total / 2)) / deviation));
    }

    /// <summary>Rank sum of the positive differences, Σ(t³ − t) over ties, and whether there are any.</summary>
    private static (double Positive, double Ties, bool Tied) RankSum(List<double> differences)
    {
        double positive = 0, ties = 0;
        var rank = 0;
        foreach (var level in differences.GroupBy(Math.Abs).OrderBy(g => g.Key))
        {
            var count = level.Count();
            positive += (rank + ((count + 1) / 2.0)) * level.Count(d => d > 0);
            ties += ((double)count * count * count) - count;
            rank += count;
        }

        return (positive, ties, ties > 0);
    }

    /// <summary>Probability of a rank sum of at most w under the hypothesis: subsets of 1…n by their sum.</summary>
    private static double ExactLower(int n, int w)
    {
        var ways = new double[w + 1];
        ways[0] = 1;
        for (var rank = 1; rank <= n; rank++)
        {
            for (var sum = w; sum >= rank; sum--)
            {
                ways[sum] += ways[sum - rank];
            }
        }

        return ways.Sum() / Math.Pow(2, n);
    }
}
