using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Whether stated probabilities come true: of zones, and of landmarks being visible.</summary>
internal static class ProbabilityTables
{
    private const int Bins = 10;

    public static Table Scores(Contest contest) => new(
        "probabilities",
        "stated probabilities against what is so: expected calibration error in 10 bins, Brier score",
        ["entrant", "view", "what", "n", "calibrationError", "brier"],
        [.. contest.Panels.SelectMany(p => Kinds(p).Select(k => (IReadOnlyList<object>)
            [p.Entrant, p.ViewWord, k.Name, k.Forecasts.Count, ExpectedCalibrationError.Of([.. k.Forecasts.SelectMany(f => f)]), BrierScore.Of(k.Forecasts)]))]);

    public static Table Curve(Contest contest) => new(
        "probability-curve",
        "stated probabilities in ten bins: mean stated, share that came true with its exact interval",
        ["entrant", "view", "what", "bin", "n", "stated", "occurred", "low", "high"],
        [.. contest.Panels.SelectMany(p => Kinds(p).SelectMany(k => Rows(p, k.Name, [.. k.Forecasts.SelectMany(f => f)])))]);

    private static IEnumerable<(string Name, List<IReadOnlyList<(double Probability, bool Occurred)>> Forecasts)> Kinds(Panel panel)
    {
        var zoned = panel.Films.SelectMany(f => f.Score.Measurements).Where(m => m.Zones is not null && m.TrueZone is not null).ToList();
        foreach (var measurement in zoned.GroupBy(m => m.Name, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            yield return ("zones of " + measurement.Key, [.. measurement.Select(Zones)]);
        }

        List<IReadOnlyList<(double, bool)>> seen =
        [
            .. panel.Films.SelectMany(f => f.Answer.Proposed.Join(f.Landmarks, p => p.Name, l => l.Name, (p, l) => (IReadOnlyList<(double, bool)>)[(p.Visibility, l.TrulyVisible), (1 - p.Visibility, !l.TrulyVisible)])),
        ];
        if (seen.Count > 0)
        {
            yield return ("landmark visible", seen);
        }
    }

    private static IReadOnlyList<(double Probability, bool Occurred)> Zones(MeasurementScore m) =>
        [.. m.Zones!.OrderBy(z => z.Key, StringComparer.Ordinal).Select(z => (z.Value, string.Equals(z.Key, m.TrueZone, StringComparison.Ordinal)))];

    private static IEnumerable<IReadOnlyList<object>> Rows(Panel panel, string what, List<(double Probability, bool Occurred)> forecasts)
    {
        foreach (var bin in forecasts.GroupBy(f => Math.Clamp((int)(f.Probability * Bins), 0, Bins - 1)).OrderBy(g => g.Key))
        {
            var (n, occurred) = (bin.Count(), bin.Count(f => f.Occurred));
            var (low, high) = ClopperPearson.Interval(occurred, n);
            yield return [panel.Entrant, panel.ViewWord, what, bin.Key, n, bin.Average(f => f.Probability), (double)occurred / n, low, high];
        }
    }
}
