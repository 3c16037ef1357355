using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>
/// Chooses limits by rules that are fixed beforehand, on films that serve nothing else: a limit of likeness is met by all
/// but a small share of well-taken films; the limit of the view error divides well-taken from poor films best.
/// </summary>
internal static class LimitChoice
{
    /// <summary>Share of well-taken films that a limit of likeness may turn away; a film meets some seven of them.</summary>
    private const double TurnedAway = 0.003;

    /// <summary>Share of films without metal or cast on which one may be seen.</summary>
    private const double SeenWrongly = 0.01;

    private const int FewestFilms = 30;

    /// <summary>New value and origin by limit name.</summary>
    /// <param name="films">Films of one view with the readings judged under the limits so far.</param>
    /// <param name="view">Their view.</param>
    /// <param name="split">What films they are, in words.</param>
    public static IReadOnlyDictionary<string, (double Value, string Origin)> Of(
        IReadOnlyList<(CalibrationFilm Film, FilmReading Reading)> films, View view, string split)
    {
        var word = Vocabularies.View.WordOf(view);
        var chosen = new Dictionary<string, (double, string)>(StringComparer.Ordinal);
        var good = films.Where(f => f.Film.IsAdequate && !f.Reading.Adequacy.Refused).ToList();
        if (good.Count < FewestFilms)
        {
            return chosen;
        }

        void Quantile(string check, string limit, IEnumerable<(CalibrationFilm, FilmReading Reading)> of, double probability, string rule)
        {
            var figures = of.Select(f => Figure(f.Reading, check)).OfType<double>().ToList();
            if (figures.Count >= FewestFilms)
            {
                chosen[limit] = (Rounded(Statistics.Quantile.Of(figures, probability)), $"chosen: {rule} of {figures.Count} {split}");
            }
        }

        const string likeness = "met by all but 3 in 1000";
        Quantile("landmark.share", "landmark.share." + word, good, TurnedAway, likeness);
        foreach (var check in new[] { "features.distance", "shape.humerus", "shape.radius", "shape.ulna" })
        {
            Quantile(check, $"{check}.{word}", good, 1 - TurnedAway, likeness);
        }

        if (view == View.Lateral)
        {
            Quantile("true-lateral.arc-offset", "true-lateral.arc-offset", good, 1 - TurnedAway, likeness);
        }

        Quantile("hardware.seen", "hardware.seen." + word, films.Where(f => f.Film.Truth.Context is not (FilmContext.Fixation or FilmContext.Cast)), 1 - SeenWrongly, "exceeded without metal by 1 in 100");
        Quantile("cast.seen", "cast.seen." + word, films.Where(f => f.Film.Truth.Context != FilmContext.Cast), 1 - SeenWrongly, "exceeded without a cast by 1 in 100");
        if (Dividing(films) is { } dividing)
        {
            chosen["view-error." + word] = (dividing, string.Create(
                CultureInfo.InvariantCulture,
                $"chosen: divides films taken within {Adequate.ViewError} degrees from those beyond {Adequate.PoorViewError} best, {films.Count} {split}"));
        }

        return chosen;
    }

    /// <summary>The limit at which the larger of both error shares is smallest; the middle of a stretch where all are equal.</summary>
    private static double? Dividing(IReadOnlyList<(CalibrationFilm Film, FilmReading Reading)> films)
    {
        var figures = films.Select(f => (Truth: f.Film.Truth.Simulated?.ViewErrorDegrees, Read: Figure(f.Reading, "view-error")))
            .Where(f => f.Truth is not null && f.Read is not null).ToList();
        var well = figures.Where(f => f.Truth <= Adequate.ViewError).Select(f => f.Read!.Value).ToList();
        var poor = figures.Where(f => f.Truth >= Adequate.PoorViewError).Select(f => f.Read!.Value).ToList();
        if (well.Count < FewestFilms || poor.Count < FewestFilms / 3)
        {
            return null;
        }

        var scored = Enumerable.Range(0, 241).Select(i => i * 0.125).Select(limit => (
            Limit: limit,
            Worst: Math.Max((double)well.Count(v => v > limit) / well.Count, (double)poor.Count(v => v <= limit) / poor.Count))).ToList();
        var least = scored.Min(s => s.Worst);
        return Rounded(scored.Where(s => s.Worst <= least + 1e-9).Average(s => s.Limit));
    }

    private static double? Figure(FilmReading reading, string check) => reading.Adequacy.Checks.FirstOrDefault(c => c.Name == check)?.Value;

    private static double Rounded(double value) => double.Parse(value.ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
