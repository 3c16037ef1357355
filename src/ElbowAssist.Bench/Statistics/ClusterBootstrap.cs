using MathNet.Numerics.Random;

namespace ElbowAssist.Bench.Statistics;

/// <summary>
/// Percentile bootstrap that draws whole clusters (a film, a patient) with replacement, because values of one cluster
/// are not independent (Efron and Tibshirani, An Introduction to the Bootstrap, 1993, chapters 8 and 13).
/// </summary>
public static class ClusterBootstrap
{
    /// <summary>Interval of a statistic over clusters of values.</summary>
    /// <param name="clusters">One list of values per cluster.</param>
    /// <param name="statistic">Statistic of all values of the drawn clusters.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <param name="draws">Number of resamples.</param>
    /// <param name="confidence">Confidence, e.g. 0.95.</param>
    /// <returns>The interval; NaN if there is no cluster.</returns>
    public static (double Low, double High) Interval(
        IReadOnlyList<IReadOnlyList<double>> clusters,
        Func<IReadOnlyList<double>, double> statistic,
        int seed,
        int draws = 1000,
        double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(clusters);
        ArgumentNullException.ThrowIfNull(statistic);
        if (clusters.Count == 0)
        {
            return (double.NaN, double.NaN);
        }

        var random = new MersenneTwister(seed, threadSafe: false);
        var statistics = new double[draws];
        var values = new List<double>();
        for (var draw = 0; draw < draws; draw++)
        {
            values.Clear();
            for (var i = 0; i < clusters.Count; i++)
            {
                values.AddRange(clusters[random.Next(clusters.Count)]);
            }

            statistics[draw] = statistic(values);
        }

        Array.Sort(statistics);
        var tail = (1 - confidence) / 2;
        return (Quantile.OfOrdered(statistics, tail), Quantile.OfOrdered(statistics, 1 - tail));
    }

    /// <summary>Interval of the mean of all values, in time that does not grow with the values of a cluster.</summary>
    /// <param name="clusters">One list of values per cluster.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <param name="draws">Number of resamples.</param>
    /// <param name="confidence">Confidence, e.g. 0.95.</param>
    /// <returns>The interval; NaN if there is no value.</returns>
    public static (double Low, double High) MeanInterval(
        IReadOnlyList<IReadOnlyList<double>> clusters, int seed, int draws = 1000, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(clusters);
        (double Sum, int Count)[] filled = [.. clusters.Where(c => c.Count > 0).Select(c => (c.Sum(), c.Count))];
        if (filled.Length == 0)
        {
            return (double.NaN, double.NaN);
        }

        var random = new MersenneTwister(seed, threadSafe: false);
        var means = new double[draws];
        for (var draw = 0; draw < draws; draw++)
        {
            double sum = 0;
            long count = 0;
            for (var i = 0; i < filled.Length; i++)
            {
                var drawn = filled[random.Next(filled.Length)];
                sum += drawn.Sum;
                count += drawn.Count;
            }

            means[draw] = sum / count;
        }

        Array.Sort(means);
        var tail = (1 - confidence) / 2;
        return (Quantile.OfOrdered(means, tail), Quantile.OfOrdered(means, 1 - tail));
    }
}
