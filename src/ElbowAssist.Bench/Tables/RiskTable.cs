using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;

namespace ElbowAssist.Bench.Tables;

/// <summary>Mean absolute error among the most certain share of given values, by the width of their redraw intervals.</summary>
internal static class RiskTable
{
    private const int Points = 20;

    private static readonly string[] Names =
    [
        "anterior-humeral-line.position", "anterior-humeral-line.shaft.position", "radiocapitellar-line.lateral.neck.offset",
        "radiocapitellar-line.lateral.shaft.offset", "radiocapitellar-line.ap.neck.offset", "radiocapitellar-line.ap.shaft.offset", "baumann-angle",
    ];

    public static Table Of(IReadOnlyList<ReadFilm> films) => new(
        "risk-coverage",
        "mean absolute error among the most certain share of values",
        ["view", "measurement", "share", "meanError"],
        [.. PromiseTables.ByView(films).SelectMany(v => Names.SelectMany(name => Rows(v.View, name, v.Films)))]);

    private static IEnumerable<IReadOnlyList<object>> Rows(string view, string name, List<ReadFilm> films)
    {
        var given = films.SelectMany(f => f.Score.Measurements).Where(m => m.Name == name && m.Redraw95 is not null)
            .Select(m => (m.Redraw95!.Value.High - m.Redraw95!.Value.Low, Math.Abs(m.Error!.Value))).ToList();
        var curve = RiskCoverage.Curve(given);
        for (var i = 1; i <= Points && curve.Count >= Points; i++)
        {
            var (share, risk) = curve[(curve.Count * i / Points) - 1];
            yield return [view, name, share, risk];
        }
    }
}
