using ElbowAssist.Geometry.Spread;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>
/// Fits the factor of the redraw intervals of each measurement: the conformal quantile of |error| over the half-width on
/// its side, over accepted films, by age band where films suffice.
/// </summary>
internal static class IntervalFit
{
    private const double Coverage = 0.95;

    /// <summary>Films from which a factor is fitted at all, and those from which a narrower band gets its own.</summary>
    private const int FewestFilms = 20;
    private const int FewestInBand = 120;

    /// <param name="films">Films with readings made with the factors so far.</param>
    /// <param name="soFar">Those factors.</param>
    public static IReadOnlyList<IntervalFactor> Of(
        IReadOnlyList<(CalibrationFilm Film, FilmReading Reading)> films, ModelCalibration soFar)
    {
        var scores = films.SelectMany(f => f.Reading.Measurements.Select(m => (
                m.Name, Age: f.Film.Truth.Patient.AgeMonths, Score: Score(m, f.Film, soFar.FactorsFor(f.Film.Truth.Patient.AgeMonths)))))
            .Where(s => s.Score is not null).ToLookup(s => s.Name, s => (s.Age, Score: s.Score!.Value), StringComparer.Ordinal);
        return [.. scores.SelectMany(s => Bands(s.Key, [.. s]))];
    }

    private static IEnumerable<IntervalFactor> Bands(string measurement, List<(int? Age, double Score)> scores)
    {
        for (var level = 0; level < AgeBands.Levels.Count; level++)
        {
            foreach (var band in AgeBands.Levels[level])
            {
                var within = scores.Where(s => AgeBands.Holds(band, s.Age)).Select(s => s.Score).ToArray();
                if (within.Length >= (level == 0 ? FewestFilms : FewestInBand))
                {
                    yield return new IntervalFactor(
                        measurement, band.From, band.To, Math.Round(ConformalQuantile.Of(within, Coverage), 4), within.Length);
                }
            }
        }
    }

    /// <summary>Error over the half-width that the interval had before it was stretched.</summary>
    private static double? Score(Measurement m, CalibrationFilm film, IReadOnlyDictionary<string, double> factors)
    {
        if (m.Value is not { } value || m.Redraw95 is not { } interval || !film.Values.TryGetValue(m.Name, out var truth))
        {
            return null;
        }

        var half = truth >= value ? interval.High - value : value - interval.Low;
        return half > 0 ? Math.Abs(truth - value) / half * factors.GetValueOrDefault(m.Name, 1) : null;
    }
}
