using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Mean error among the most certain share: of films by the stated spread of their landmarks, of values by their intervals.</summary>
internal static class RiskTables
{
    private const int Points = 20;

    public static Table Curve(Contest contest) => new(
        "risk-coverage",
        "mean absolute error among the most certain share, certain by the entrant's own word",
        ["entrant", "view", "what", "unit", "share", "meanError"],
        [.. contest.Panels.SelectMany(p => Kinds(p).SelectMany(k => Rows(p, k.Name, k.Unit, RiskCoverage.Curve(k.Films))))]);

    public static Table Area(Contest contest) => new(
        "risk-area",
        "area under the curve of error against share; random order would give the mean error, order by the error itself the best",
        ["entrant", "view", "what", "unit", "n", "area", "randomOrder", "bestOrder"],
        [.. contest.Panels.SelectMany(p => Kinds(p).Select(k => (IReadOnlyList<object>)
            [p.Entrant, p.ViewWord, k.Name, k.Unit, k.Films.Count, Mean(k.Films), k.Films.Average(f => f.Loss), Mean([.. k.Films.Select(f => (f.Loss, f.Loss))])]))]);

    private static double Mean(IReadOnlyList<(double, double)> films) => RiskCoverage.Curve(films).Average(c => c.Risk);

    private static IEnumerable<(string Name, string Unit, IReadOnlyList<(double Uncertainty, double Loss)> Films)> Kinds(Panel panel)
    {
        List<(double, double)> films = [.. panel.Films.Where(f => f.MeanRadial is not null && f.Answer.Proposed.Any(l => l.Covariance is not null))
            .Select(f => (f.Answer.Proposed.Where(l => l.Covariance is not null).Average(l => Math.Sqrt(l.Covariance!.Value.XX + l.Covariance.Value.YY)), f.MeanRadial!.Value))];
        if (films.Count > 0)
        {
            yield return ("landmarks, radial", panel.Unit, films);
        }

        foreach (var of in panel.Films.SelectMany(f => f.Score.Measurements).Where(m => m.Redraw95 is not null).GroupBy(m => (m.Name, m.Unit)).OrderBy(g => g.Key.Name, StringComparer.Ordinal))
        {
            yield return (of.Key.Name, of.Key.Unit, [.. of.Select(m => (m.Redraw95!.Value.High - m.Redraw95!.Value.Low, Math.Abs(m.Error!.Value)))]);
        }
    }

    private static IEnumerable<IReadOnlyList<object>> Rows(Panel panel, string what, string unit, IReadOnlyList<(double Coverage, double Risk)> curve)
    {
        for (var i = 1; i <= Points && curve.Count >= Points; i++)
        {
            var (share, risk) = curve[(curve.Count * i / Points) - 1];
            yield return [panel.Entrant, panel.ViewWord, what, unit, share, risk];
        }
    }
}
