using ElbowAssist.Bench.Statistics;

namespace ElbowAssist.Bench.Scoring;

/// <summary>The distribution of an absolute error over films.</summary>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Mean.</param>
/// <param name="MeanLow">Lower end of the 95 % interval of the mean, bootstrap by cluster.</param>
/// <param name="MeanHigh">Upper end of that interval.</param>
/// <param name="StandardDeviation">Standard deviation, n − 1.</param>
/// <param name="Median">Median.</param>
/// <param name="P90">90th percentile.</param>
/// <param name="P95">95th percentile.</param>
/// <param name="Maximum">Largest value.</param>
public sealed record ErrorSummary(
    int Count,
    double Mean,
    double MeanLow,
    double MeanHigh,
    double StandardDeviation,
    double Median,
    double P90,
    double P95,
    double Maximum)
{
    internal const int BootstrapSeed = 20_000;
    internal const int Draws = 1000;

    /// <summary>25th percentile.</summary>
    public double P25 { get; init; }

    /// <summary>75th percentile.</summary>
    public double P75 { get; init; }

    /// <summary>The summary of absolute errors grouped by film or patient; null if there is no error at all.</summary>
    /// <param name="byFilm">Errors of each cluster, a film or a patient; clusters without errors do not count.</param>
    public static ErrorSummary? Of(IEnumerable<IReadOnlyList<double>> byFilm)
    {
        var films = byFilm.Where(f => f.Count > 0).ToList();
        var errors = films.SelectMany(f => f).Select(Math.Abs).Order().ToArray();
        if (errors.Length == 0)
        {
            return null;
        }

        var (low, high) = ClusterBootstrap.MeanInterval([.. films.Select(f => (IReadOnlyList<double>)[.. f.Select(Math.Abs)])], BootstrapSeed, Draws);
        var mean = errors.Average();
        var sd = errors.Length < 2 ? 0 : Math.Sqrt(errors.Sum(e => (e - mean) * (e - mean)) / (errors.Length - 1));
        return new ErrorSummary(
            errors.Length,
            mean,
            low,
            high,
            sd,
            Quantile.OfOrdered(errors, 0.5),
            Quantile.OfOrdered(errors, 0.9),
            Quantile.OfOrdered(errors, 0.95),
            errors[^1])
        {
            P25 = Quantile.OfOrdered(errors, 0.25),
            P75 = Quantile.OfOrdered(errors, 0.75),
        };
    }
}
