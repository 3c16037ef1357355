using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>The figures of each landmark.</summary>
internal static class LandmarkTable
{
    // 95 % point of chi-squared with two degrees of freedom.
    private const double EllipseLimit = 5.991464547107979;

    public static Table Of(Contest contest) => new(
        "landmarks",
        "each landmark: errors before any limit, share within 2, 2.5, 3 and 4 mm, share within its stated 95 % ellipse, share of films that hide it but got a place in the reading",
        [
            "entrant", "view", "landmark", "kind", "unit", "n", "missing", "mean", "meanLow", "meanHigh", "sd", "p25", "median", "p75", "p90", "p95", "largest",
            "acrossMean", "acrossP95", "alongMean", "alongP95", "within2", "within2.5", "within3", "within4", "inEllipse", "hiddenButLaid",
        ],
        [.. contest.Panels.SelectMany(p => p.Films[0].Landmarks.Select(l => Row(p, l)))]);

    private static IReadOnlyList<object> Row(Panel panel, LandmarkScore named)
    {
        List<LandmarkScore> Scores(Func<ScoredFilm, IReadOnlyList<LandmarkScore>> of) =>
            [.. panel.Films.Select(f => of(f).FirstOrDefault(l => l.Name == named.Name)).OfType<LandmarkScore>()];
        ErrorSummary? Summary(Func<LandmarkScore, double?> error) => ErrorSummary.Of(ByPatient.Of(
            panel.Films, f => f.Landmarks.Where(l => l.Name == named.Name).Select(error).OfType<double>()));

        var all = Scores(f => f.Landmarks);
        var visible = all.FindAll(l => l.TrulyVisible);
        var hidden = Scores(f => f.Score.Refused ? [] : f.Score.Landmarks).FindAll(l => !l.TrulyVisible);
        var stated = visible.FindAll(l => l.Mahalanobis is not null);
        var (radial, across, along) = (Summary(l => l.Radial), Summary(l => l.Normal), Summary(l => l.Slip));
        double Within(double distance) => panel.Unit == "mm" ? PromiseTables.Share(visible.Count(l => l.Radial <= distance), visible.Count) : double.NaN;
        return
        [
            panel.Entrant, panel.ViewWord, named.Name, named.Kind.ToString().ToLowerInvariant(), panel.Unit, radial?.Count ?? 0, visible.Count(l => l.Radial is null), .. Distribution.Of(radial),
            across?.Mean ?? double.NaN, across?.P95 ?? double.NaN, along?.Mean ?? double.NaN, along?.P95 ?? double.NaN, Within(2), Within(2.5), Within(3), Within(4),
            PromiseTables.Share(stated.Count(l => l.Mahalanobis <= EllipseLimit), stated.Count), PromiseTables.Share(hidden.Count(l => l.ReportedVisible), hidden.Count),
        ];
    }
}
