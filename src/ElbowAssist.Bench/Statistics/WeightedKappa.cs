namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Chance-corrected agreement of two ratings on an ordered scale with quadratic weights (Cohen, Psychol Bull
/// 1968;70:213–220), with the large-sample 95 % interval of Fleiss, Cohen and Everitt (Psychol Bull 1969;72:323–327).
/// </summary>
/// <param name="Value">Kappa; NaN if chance alone would agree fully.</param>
/// <param name="Low">Lower end of its interval.</param>
/// <param name="High">Upper end of its interval.</param>
public sealed record WeightedKappa(double Value, double Low, double High)
{
    private const double Normal95 = 1.959963984540054;

    /// <summary>Kappa with quadratic weights.</summary>
    /// <param name="first">Category index of each object by the first rater, from 0.</param>
    /// <param name="second">Category index by the second rater.</param>
    /// <param name="categories">Number of categories.</param>
    /// <exception cref="ArgumentException">The lists differ in length or are empty.</exception>
    public static WeightedKappa Of(IReadOnlyList<int> first, IReadOnlyList<int> second, int categories)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (first.Count != second.Count || first.Count == 0)
        {
            throw new ArgumentException("Two lists of equal length with at least one value are needed.", nameof(second));
        }

        double n = first.Count;
        var shares = new double[categories, categories];
        var rows = new double[categories];
        var columns = new double[categories];
        for (var i = 0; i < first.Count; i++)
        {
            shares[first[i], second[i]] += 1 / n;
            rows[first[i]] += 1 / n;
            columns[second[i]] += 1 / n;
        }

        double Weight(int i, int j) => 1 - ((double)(i - j) * (i - j) / ((categories - 1.0) * (categories - 1)));
        double[] rowWeights = [.. Enumerable.Range(0, categories).Select(i => Enumerable.Range(0, categories).Sum(j => columns[j] * Weight(i, j)))];
        double[] columnWeights = [.. Enumerable.Range(0, categories).Select(j => Enumerable.Range(0, categories).Sum(i => rows[i] * Weight(i, j)))];
        var observed = Sum((i, j) => shares[i, j] * Weight(i, j));
        var expected = Sum((i, j) => rows[i] * columns[j] * Weight(i, j));
        if (1 - expected < 1e-12)
        {
            return new WeightedKappa(double.NaN, double.NaN, double.NaN);
        }

        var kappa = (observed - expected) / (1 - expected);
        var spread = Sum((i, j) => shares[i, j] * Math.Pow(Weight(i, j) - ((rowWeights[i] + columnWeights[j]) * (1 - kappa)), 2));
        var variance = (spread - Math.Pow(kappa - (expected * (1 - kappa)), 2)) / (n * (1 - expected) * (1 - expected));
        var margin = Normal95 * Math.Sqrt(Math.Max(0, variance));
        return new WeightedKappa(kappa, kappa - margin, kappa + margin);

        double Sum(Func<int, int, double> term)
        {
            double sum = 0;
            for (var i = 0; i < categories; i++)
            {
                for (var j = 0; j < categories; j++)
                {
                    sum += term(i, j);
                }
            }

            return sum;
        }
    }

    /// <summary>Kappa alone.</summary>
    public static double Quadratic(IReadOnlyList<int> first, IReadOnlyList<int> second, int categories) => Of(first, second, categories).Value;
}
