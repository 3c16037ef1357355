using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Errors, coverage and sharpness of each measurement as the readings give it.</summary>
internal static class MeasurementTable
{
    public static Table Of(Contest contest) => new(
        "measurements",
        "measurements against the reference: given or withheld, signed and absolute error, redraw intervals that hold the reference (exact interval), their width and interval score",
        [
            "entrant", "view", "group", "measurement", "unit", "n", "given", "withheld", "bias", "mean", "meanLow", "meanHigh", "sd", "p25", "median", "p75", "p90", "p95", "largest",
            "held", "heldShare", "heldLow", "heldHigh", "medianWidth", "widthOverError", "intervalScore",
        ],
        [.. contest.Panels.SelectMany(p => p.Groups.SelectMany(g => Names(p).Select(name => Row(p, g.Name, g.Films, name)).OfType<IReadOnlyList<object>>()))]);

    /// <summary>Measurements that any film of a panel has in its reference.</summary>
    internal static IReadOnlyList<string> Names(Panel panel) =>
        [.. panel.Films.SelectMany(f => f.Film.Truth.Measurements).Select(m => m.Name).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private static IReadOnlyList<object>? Row(Panel panel, string group, List<ScoredFilm> films, string name)
    {
        var known = films.SelectMany(f => f.Film.Truth.Measurements).Where(m => m.Name == name && m.Value is not null).ToList();
        if (known.Count == 0)
        {
            return null;
        }

        var given = films.SelectMany(f => f.Score.Measurements).Where(m => m.Name == name && m.Error is not null).ToList();
        var summary = ErrorSummary.Of(ByPatient.Of(films, f => f.Score.Measurements.Where(m => m.Name == name).Select(m => m.Error).OfType<double>()));
        var stated = given.FindAll(m => m.Redraw95 is not null);
        var held = stated.Count(m => m.Covered == true);
        var (low, high) = stated.Count == 0 ? (double.NaN, double.NaN) : ClopperPearson.Interval(held, stated.Count);
        var width = Quantile.Median(stated.Select(m => m.Redraw95!.Value.High - m.Redraw95!.Value.Low));
        return
        [
            panel.Entrant, panel.ViewWord, group, name, known[0].Unit, known.Count, given.Count, known.Count - given.Count,
            given.Count == 0 ? double.NaN : given.Average(m => m.Error!.Value), .. Distribution.Of(summary),
            held, PromiseTables.Share(held, stated.Count), low, high, width, width / (summary?.Median ?? double.NaN),
            stated.Count == 0 ? double.NaN : stated.Average(m => IntervalScore.Of(m.Redraw95!.Value.Low, m.Redraw95!.Value.High, m.Truth)),
        ];
    }
}
