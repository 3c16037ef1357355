using System.Globalization;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>
/// Share of visible landmarks laid within a distance of where they are, on films with a spacing. A landmark that was not
/// laid is not within any distance.
/// </summary>
internal static class SuccessTables
{
    private const double CurveStep = 0.25;
    private const int CurvePoints = 40;
    private static readonly double[] Distances = [2, 2.5, 3, 4];

    public static Table Rates(Contest contest) => new(
        "success-rates",
        "share of visible landmarks within a distance; intervals by bootstrap of patients",
        ["entrant", "view", "group", "films", "n", .. Distances.SelectMany(d => new[] { Name(d), Name(d) + "Low", Name(d) + "High" })],
        [.. InMillimetres(contest).SelectMany(p => p.Groups.Select(g => Rate(p, g.Name, g.Films)))]);

    public static Table Curve(Contest contest) => new(
        "success-curve",
        "share of visible landmarks within every distance, all films",
        ["entrant", "view", "distanceMm", "share"],
        [.. InMillimetres(contest).SelectMany(Points)]);

    private static IEnumerable<Panel> InMillimetres(Contest contest) => contest.Panels.Where(p => p.Unit == "mm");

    private static IReadOnlyList<object> Rate(Panel panel, string group, List<ScoredFilm> films) =>
    [
        panel.Entrant, panel.ViewWord, group, films.Count, films.Sum(f => Visible(f).Count()),
        .. Distances.SelectMany(distance =>
        {
            var hits = ByPatient.Of(films, f => Visible(f).Select(l => l.Radial <= distance ? 1.0 : 0));
            var (low, high) = ClusterBootstrap.MeanInterval(hits, ErrorSummary.BootstrapSeed, ErrorSummary.Draws);
            return new object[] { hits.SelectMany(h => h).DefaultIfEmpty(double.NaN).Average(), low, high };
        }),
    ];

    private static IEnumerable<IReadOnlyList<object>> Points(Panel panel)
    {
        double[] radii = [.. panel.Films.SelectMany(Visible).Select(l => l.Radial ?? double.PositiveInfinity).Order()];
        var within = 0;
        for (var i = 0; i <= CurvePoints && radii.Length > 0; i++)
        {
            var distance = i * CurveStep;
            while (within < radii.Length && radii[within] <= distance)
            {
                within++;
            }

            yield return [panel.Entrant, panel.ViewWord, distance, (double)within / radii.Length];
        }
    }

    private static IEnumerable<LandmarkScore> Visible(ScoredFilm film) => film.Landmarks.Where(l => l.TrulyVisible);

    private static string Name(double distance) => string.Create(CultureInfo.InvariantCulture, $"within{distance}mm");
}
