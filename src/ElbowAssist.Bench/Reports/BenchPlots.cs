using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Reports;

/// <summary>The plots of a bench, drawn from its tables and its films.</summary>
internal static class BenchPlots
{
    public static IEnumerable<LinePlot> Success(IReadOnlyList<Table> tables) => Curves(tables, "success-curve", "distanceMm", "share", [])
        .Select(c => new LinePlot($"Landmarks within a distance, {c.Key}", "distance, mm", "share of visible landmarks", c.Curves) { YRange = (0, 1) });

    public static IEnumerable<LinePlot> Risk(IReadOnlyList<Table> tables) => Curves(tables, "risk-coverage", "share", "meanError", ["what", "unit"])
        .Select(c => new LinePlot($"Error among the most certain, {c.Key}", "share kept", "mean error", c.Curves) { XRange = (0, 1) });

    public static IEnumerable<LinePlot> Probabilities(IReadOnlyList<Table> tables) => Curves(tables, "probability-curve", "stated", "occurred", ["what"])
        .Select(c => new LinePlot($"Stated and true, {c.Key}", "stated probability", "share that came true", c.Curves) { XRange = (0, 1), YRange = (0, 1), Diagonal = true });

    /// <summary>Differences against means, with bias and limits of agreement, for each entrant and measurement against the reference.</summary>
    public static IEnumerable<LinePlot> BlandAltman(Contest contest)
    {
        foreach (var panel in contest.Panels)
        {
            foreach (var of in panel.Films.SelectMany(f => f.Score.Measurements).Where(m => m.Error is not null).GroupBy(m => (m.Name, m.Unit)).OrderBy(g => g.Key.Name, StringComparer.Ordinal))
            {
                var pairs = of.Select(m => (Given: m.Truth + m.Error!.Value, m.Truth)).ToList();
                if (pairs.Count < 3)
                {
                    continue;
                }

                var agreement = Statistics.BlandAltman.Of(pairs.ConvertAll(p => p.Given), pairs.ConvertAll(p => p.Truth));
                var unit = of.Key.Unit == "1" ? "" : ", " + of.Key.Unit;
                yield return new LinePlot(
                    $"{of.Key.Name}, {panel.Entrant}", "mean of entrant and reference" + unit, "entrant − reference" + unit,
                    [new Curve($"{pairs.Count} films", [.. pairs.Select(p => ((p.Given + p.Truth) / 2, p.Given - p.Truth))], Joined: false)])
                {
                    Levels = [(agreement.LowerLimit, "−1.96 SD"), (agreement.Bias, "bias"), (agreement.UpperLimit, "+1.96 SD")],
                };
            }
        }
    }

    private static IEnumerable<(string Key, IReadOnlyList<Curve> Curves)> Curves(IReadOnlyList<Table> tables, string name, string x, string y, string[] also)
    {
        if (tables.FirstOrDefault(t => t.Name == name) is not { } table)
        {
            yield break;
        }

        var columns = table.Columns.Index().ToDictionary(c => c.Item, c => c.Index, StringComparer.Ordinal);
        string Word(IReadOnlyList<object> row, string column) => Table.Shown(row[columns[column]]);
        foreach (var plot in table.Rows.GroupBy(r => string.Join(", ", also.Prepend("view").Select(a => Word(r, a)).Where(w => w is not ("1" or "")))))
        {
            yield return (plot.Key, [.. plot.GroupBy(r => Word(r, "entrant")).Select(c => new Curve(c.Key, [.. c.Select(r => ((double)r[columns[x]], (double)r[columns[y]]))]))]);
        }
    }
}
