namespace ElbowAssist.Bench.Statistics;

/// <summary>Chance-corrected agreement of two ratings on an ordered scale (Cohen, Psychol Bull 1968;70:213–220).</summary>
public static class WeightedKappa
{
    /// <summary>Kappa with quadratic disagreement weights.</summary>
    /// <param name="first">Category index of each object by the first rater, from 0.</param>
    /// <param name="second">Category index by the second rater.</param>
    /// <param name="categories">Number of categories.</param>
    /// <returns>Kappa; NaN if chance alone would agree fully.</returns>
    /// <exception cref="ArgumentException">The lists differ in length or are empty.</exception>
    public static double Quadratic(IReadOnlyList<int> first, IReadOnlyList<int> second, int categories)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (first.Count != second.Count || first.Count == 0)
        {
            throw new ArgumentException("Two lists of equal length with at least one value are needed.", nameof(second));
        }

        var counts = new double[categories, categories];
        var rows = new double[categories];
        var columns = new double[categories];
        for (var i = 0; i < first.Count; i++)
        {
            counts[first[i], second[i]]++;
            rows[first[i]]++;
            columns[second[i]]++;
        }

        double observed = 0, expected = 0;
        for (var i = 0; i < categories; i++)
        {
            for (var j = 0; j < categories; j++)
            {
                var weight = (double)(i - j) * (i - j);
                observed += weight * counts[i, j];
                expected += weight * rows[i] * columns[j] / first.Count;
            }
        }

        return expected == 0 ? double.NaN : 1 - (observed / expected);
    }
}
