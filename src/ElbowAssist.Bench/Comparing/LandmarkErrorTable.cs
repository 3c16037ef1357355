using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Distributions of landmark errors before any limit: radial of all and of points, across and along outlines.</summary>
internal static class LandmarkErrorTable
{
    private static readonly (string Name, Func<LandmarkScore, double?> Error, LandmarkKind? Kind)[] Errors =
    [
        ("radial", l => l.Radial, null),
        ("radial, points", l => l.Radial, LandmarkKind.Point),
        ("across outline", l => l.Normal, LandmarkKind.Contour),
        ("along outline", l => l.Slip, LandmarkKind.Contour),
    ];

    public static Table Of(Contest contest) => new(
        "landmark-errors",
        "errors of visible landmarks before any limit; interval of the mean by bootstrap of patients",
        ["entrant", "view", "group", "error", "unit", "films", "n", "missing", "mean", "meanLow", "meanHigh", "sd", "p25", "median", "p75", "p90", "p95", "largest"],
        [.. contest.Panels.SelectMany(p => p.Groups.SelectMany(g => Errors.Select(e => Row(p, g.Name, g.Films, e))))]);

    private static IReadOnlyList<object> Row(Panel panel, string group, List<ScoredFilm> films, (string Name, Func<LandmarkScore, double?> Error, LandmarkKind? Kind) error)
    {
        var summary = ErrorSummary.Of(ByPatient.Of(films, f => f.Landmarks.Where(Counts).Select(error.Error).OfType<double>()));
        var missing = films.Sum(f => f.Landmarks.Count(l => Counts(l) && l.TrulyVisible && l.Radial is null));
        return [panel.Entrant, panel.ViewWord, group, error.Name, panel.Unit, films.Count, summary?.Count ?? 0, missing, .. Distribution.Of(summary)];

        bool Counts(LandmarkScore l) => error.Kind is not { } kind || l.Kind == kind;
    }
}
