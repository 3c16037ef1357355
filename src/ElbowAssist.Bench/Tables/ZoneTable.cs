using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;

namespace ElbowAssist.Bench.Tables;

/// <summary>Whether zone probabilities come true as often as they say.</summary>
internal static class ZoneTable
{
    public static Table Of(IReadOnlyList<ReadFilm> films) => new(
        "zones",
        "expected calibration error of zone probabilities, 10 bins",
        ["view", "group", "measurement", "films", "calibrationError"],
        [.. PromiseTables.ByView(films).SelectMany(v => PromiseTables.Groups(v.Films).SelectMany(g => Rows(v.View, g.Name, g.Films)))]);

    private static IEnumerable<IReadOnlyList<object>> Rows(string view, string group, List<ReadFilm> films)
    {
        var told = films.SelectMany(f => f.Score.Measurements).Where(m => m.Zones is not null && m.TrueZone is not null).ToList();
        foreach (var (name, of) in told.GroupBy(m => m.Name, StringComparer.Ordinal).Select(g => (g.Key, g.ToList())).Prepend(("all", told)))
        {
            if (of.Count > 0)
            {
                yield return [view, group, name, of.Count, ExpectedCalibrationError.Of([.. of.SelectMany(Forecasts)])];
            }
        }
    }

    private static IEnumerable<(double, bool)> Forecasts(MeasurementScore m) =>
        m.Zones!.Select(z => (z.Value, string.Equals(z.Key, m.TrueZone, StringComparison.Ordinal)));
}
