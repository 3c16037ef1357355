using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>Fits temperature and mix of zone probabilities by the largest likelihood of the true zones.</summary>
internal static class ZoneFit
{
    private const int FewestFilms = 50;

    private static readonly double[] Temperatures = [.. Enumerable.Range(0, 46).Select(i => 0.5 + (0.1 * i))];
    private static readonly double[] Mixes = [0.001, 0.002, 0.005, 0.01, 0.02, 0.03, 0.05, 0.08, 0.12];

    /// <param name="films">Films with readings whose zone probabilities are not corrected yet.</param>
    public static IReadOnlyList<ZoneTable> Of(IReadOnlyList<(CalibrationFilm Film, FilmReading Reading)> films)
    {
        var zones = ViewMeasurements.Lateral.Concat(ViewMeasurements.Ap).Where(m => m.Zones.Count > 0).DistinctBy(m => m.Name)
            .ToDictionary(m => m.Name, m => m.Zones, StringComparer.Ordinal);
        var told = films.SelectMany(f => f.Reading.Measurements
                .Where(m => m.Zones is not null && f.Film.Values.ContainsKey(m.Name))
                .Select(m => (m.Name, Shares: m.Zones!, True: zones[m.Name].First(z => z.Holds(f.Film.Values[m.Name])).Name)))
            .ToLookup(t => t.Name, t => (t.Shares, t.True), StringComparer.Ordinal);
        return [.. told.Where(t => t.Count() >= FewestFilms).Select(t => Fit(t.Key, zones[t.Key], [.. t]))];
    }

    private static ZoneTable Fit(
        string measurement, IReadOnlyList<Zone> zones, List<(IReadOnlyDictionary<string, double> Shares, string True)> films)
    {
        // One film more in every zone: none is impossible because it was not seen.
        var prior = zones.ToDictionary(
            z => z.Name, z => Math.Round((films.Count(f => f.True == z.Name) + 1.0) / (films.Count + zones.Count), 5), StringComparer.Ordinal);
        var (temperature, mix) = Temperatures.SelectMany(t => Mixes.Select(m => (t, m))).MaxBy(c =>
        {
            var correction = new ZoneCorrection(c.t, c.m, prior);
            return films.Sum(f => Math.Log(Math.Max(1e-12, correction.Apply(f.Shares)[f.True])));
        });
        return new ZoneTable(measurement, Math.Round(temperature, 2), mix, prior, films.Count);
    }
}
