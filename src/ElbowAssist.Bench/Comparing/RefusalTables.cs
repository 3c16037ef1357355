using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Exchange.Json;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Whether refusing and withholding hit the right films and values.</summary>
internal static class RefusalTables
{
    /// <summary>Mean radial error from which a film counts as laid wrongly, mm: the widest of the field's success distances.</summary>
    private const double WrongMm = 4;

    public static Table Films(Contest contest) => new(
        "refusals",
        "films refused: rightly where the film is known to be poor (simulated: turned by at least 18 degrees, or a fault of exposure or field) or where the landmarks would have been 4 mm off in the mean, wrongly where it is well taken",
        ["entrant", "view", "group", "films", "refused", "poor", "poorRefused", "wellTaken", "wellTakenRefused", "wellTakenRefusedLow", "wellTakenRefusedHigh", "wronglyLaid", "wronglyLaidRefused", "rightlyLaid", "rightlyLaidRefused"],
        [.. contest.Panels.SelectMany(p => p.Groups.Select(g => Row(p, g.Name, g.Films)))]);

    public static Table Values(Contest contest) => new(
        "withheld-values",
        "values of films not refused: laid through the landmarks before any limit they would have missed the reference by so much, given and withheld apart",
        ["entrant", "view", "measurement", "unit", "given", "givenMedian", "givenP95", "withheld", "withheldMedian", "withheldP95"],
        [.. contest.Panels.SelectMany(p => MeasurementTable.Names(p).Select(name => Row(p, name)))]);

    private static IReadOnlyList<object> Row(Panel panel, string group, List<ScoredFilm> films)
    {
        var simulated = films.FindAll(f => f.Film.Truth.Simulated is not null);
        var poor = simulated.FindAll(f => IsPoor(f.Film.Truth.Simulated!));
        var well = simulated.FindAll(f => Adequate.Holds(f.Film.Truth.Simulated));
        var laid = panel.Unit == "mm" ? films.FindAll(f => f.MeanRadial is not null) : [];
        var (wrong, right) = (laid.FindAll(f => f.MeanRadial >= WrongMm), laid.FindAll(f => f.MeanRadial < WrongMm));
        var (low, high) = well.Count == 0 ? (double.NaN, double.NaN) : ClopperPearson.Interval(Refused(well), well.Count);
        return
        [
            panel.Entrant, panel.ViewWord, group, films.Count, Refused(films), poor.Count, Refused(poor), well.Count, Refused(well), low, high,
            wrong.Count, Refused(wrong), right.Count, Refused(right),
        ];
    }

    private static bool IsPoor(SimulatedFacts s) => s.ViewErrorDegrees >= Adequate.PoorViewError || Adequate.Faults(s).Any();

    private static int Refused(List<ScoredFilm> films) => films.Count(f => f.Score.Refused);

    private static IReadOnlyList<object> Row(Panel panel, string name)
    {
        List<double> given = [], withheld = [];
        var unit = "";
        foreach (var film in panel.Films.Where(f => !f.Score.Refused))
        {
            if (film.Score.Measurements.FirstOrDefault(m => m.Name == name) is not { } score)
            {
                continue;
            }

            unit = score.Unit;
            if (Laid(film).TryGetValue(name, out var value))
            {
                (score.Error is null ? withheld : given).Add(Math.Abs(value - score.Truth));
            }
        }

        return
        [
            panel.Entrant, panel.ViewWord, name, unit, given.Count, Quantile.Median(given), Quantile.Of(given, 0.95), withheld.Count, Quantile.Median(withheld), Quantile.Of(withheld, 0.95),
        ];
    }

    private static IReadOnlyDictionary<string, double> Laid(ScoredFilm film)
    {
        var byName = film.Answer.Proposed.ToDictionary(l => l.Name, l => l.Position, StringComparer.Ordinal);
        return RatedFilm.OfPlaces(film.Film, [.. LandmarkSet.Of(film.Film.Truth.View.Name)!.Landmarks.Select(l => byName.GetValueOrDefault(l.Name))]).Values;
    }
}
