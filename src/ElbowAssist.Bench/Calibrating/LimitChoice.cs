using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>
/// Chooses limits by rules that are fixed beforehand, on films that serve nothing else: a limit of likeness lets
/// all but a small share of well-taken films through; the limit of the view error divides well-taken from poor films best.
/// </summary>
internal static class LimitChoice
{
    /// <summary>Share of well-taken films that a limit of likeness may turn away; a film meets some seven of them.</summary>
    private const double TurnedAway = 0.003;

    /// <summary>Share of films without metal or cast on which one may be seen.</summary>
    private const double SeenWrongly = 0.01;

    /// <summary>Share of films with metal or cast on which it must be seen for the check to be of use.</summary>
    private const double SeenRightly = 0.2;

    /// <summary>A probability that no film exceeds.</summary>
    private const double Never = 1;

    private const int FewestFilms = 15;

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

        void Likeness(string check, string limit, Func<double, double> scale, Func<double, double> back, string law = "log-normal")
        {
            var figures = good.Select(f => Figure(f.Reading, check)).OfType<double>().ToList();
            if (figures.Count >= FewestFilms)
            {
                chosen[limit] = (
                    Rounded(back(PredictionLimit.Upper(figures.ConvertAll(v => scale(v)), TurnedAway))),
                    string.Create(CultureInfo.InvariantCulture, $"chosen: {law} prediction limit that 3 in 1000 go beyond, from {figures.Count} well-taken films of {split}"));
            }
        }

        Likeness("landmark.share", "landmark.share." + word, share => Logarithm(1 - share), beyond => 1 - Math.Exp(beyond));
        foreach (var check in new[] { "features.distance", "shape.humerus", "shape.radius", "shape.ulna" })
        {
            Likeness(check, $"{check}.{word}", Logarithm, Math.Exp);
        }

        Likeness("exposure.noise", "exposure.noise." + word, v => v, v => v, "normal");
        Likeness("exposure.blur", "exposure.blur." + word, Logarithm, Math.Exp);
        if (view == View.Lateral)
        {
            // Near zero on a true lateral, where logarithms would spread without end.
            Likeness("true-lateral.arc-offset", "true-lateral.arc-offset", v => v, v => v, "normal");
        }

        void Seen(string check, string limit, string what, Func<FilmContext, bool> present)
        {
            var with = films.Where(f => present(f.Film.Truth.Context)).Select(f => Figure(f.Reading, check)).OfType<double>().ToList();
            var without = films.Where(f => !present(f.Film.Truth.Context)).Select(f => Figure(f.Reading, check)).OfType<double>().ToList();
            if (without.Count < FewestFilms || with.Count == 0)
            {
                return;
            }

            var value = Rounded(Statistics.Quantile.Of(without, 1 - SeenWrongly));
            var found = with.Count(v => v > value);
            chosen[limit] = found >= SeenRightly * with.Count
                ? (value, string.Create(CultureInfo.InvariantCulture, $"chosen: exceeded without {what} by 1 in 100 of {without.Count}, with it by {found} of {with.Count} {split}"))
                : (Never, string.Create(CultureInfo.InvariantCulture, $"chosen: never met, since at 1 false sighting in 100 only {found} of {with.Count} {split} with {what} were told"));
        }

        Seen("hardware.seen", "hardware.seen." + word, "metal", c => c is FilmContext.Fixation);
        Seen("cast.seen", "cast.seen." + word, "a cast", c => c is FilmContext.Cast);
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

    private static double Logarithm(double value) => Math.Log(Math.Max(value, 1e-6));

    private static double Rounded(double value) => double.Parse(value.ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
