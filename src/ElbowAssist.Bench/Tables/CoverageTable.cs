using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;

namespace ElbowAssist.Bench.Tables;

/// <summary>How often redraw intervals hold the truth, and how wide they are for it, over values that are given.</summary>
internal static class CoverageTable
{
    /// <summary>Values from which a group's interval is taken to say something.</summary>
    private const int FewestValues = 150;

    public static Table Of(IReadOnlyList<ReadFilm> films)
    {
        var cells = PromiseTables.ByView(films).SelectMany(v => PromiseTables.Groups(v.Films).SelectMany(g => Cells(v.View, g.Name, g.Films))).ToList();
        var tested = Math.Max(1, cells.Count(c => c.Given.Count >= FewestValues));
        return new Table(
            "coverage",
            FormattableString.Invariant($"redraw intervals that hold the truth; exact intervals at 1 - 0.05/{tested} (Bonferroni over cells of at least {FewestValues} values)"),
            ["view", "group", "measurement", "n", "held", "share", "low", "high", "meets90to99", "medianWidth", "medianError", "widthOverError"],
            [.. cells.Select(c => Row(c, tested))]);
    }

    private static IEnumerable<Cell> Cells(string view, string group, List<ReadFilm> films)
    {
        var given = films.SelectMany(f => f.Score.Measurements).Where(m => m.Redraw95 is not null).ToList();
        yield return new Cell(view, group, "all", given);
        foreach (var measurement in given.GroupBy(m => m.Name, StringComparer.Ordinal).OrderBy(m => m.Key, StringComparer.Ordinal))
        {
            yield return new Cell(view, group, measurement.Key, [.. measurement]);
        }
    }

    private static IReadOnlyList<object> Row(Cell cell, int tested)
    {
        var (n, held) = (cell.Given.Count, cell.Given.Count(m => m.Covered == true));
        var (low, high) = n == 0 ? (double.NaN, double.NaN) : ClopperPearson.Interval(held, n, 1 - (0.05 / tested));

        // Widths of different units cannot be pooled.
        var single = cell.Measurement != "all";
        var width = single ? Quantile.Median(cell.Given.Select(m => m.Redraw95!.Value.High - m.Redraw95!.Value.Low)) : double.NaN;
        var error = single ? Quantile.Median(cell.Given.Select(m => Math.Abs(m.Error!.Value))) : double.NaN;
        return
        [
            cell.View, cell.Group, cell.Measurement, n, held, PromiseTables.Share(held, n), low, high,
            n < FewestValues ? "" : low <= 0.99 && high >= 0.90, width, error, width / error,
        ];
    }

    private sealed record Cell(string View, string Group, string Measurement, List<MeasurementScore> Given);
}
