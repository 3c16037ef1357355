using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Tables;

/// <summary>
/// On which side of their decision limits values lie: measured on the right side, measured on the wrong one, either-side,
/// withheld. Only films whose truth has the value count; a refused film counts as withheld.
/// </summary>
internal static class StateTable
{
    public static Table OfClasses(IReadOnlyList<ReadFilm> films) => new(
        "states",
        "measurements with decision limits, by age band and injury",
        ["view", "group", "measurement", "n", "measuredRight", "measuredWrong", "eitherSide", "withheld"],
        [.. PromiseTables.ByView(films).SelectMany(v => PromiseTables.Groups(v.Films).SelectMany(g =>
            Names(v.Films).Select(name => (Name: name, Counted: Count(name, g.Films, _ => true))).Where(c => c.Counted.N > 0)
                .Select(c => (IReadOnlyList<object>)[v.View, g.Name, c.Name, c.Counted.N, c.Counted.Right, c.Counted.Wrong, c.Counted.Either, c.Counted.Withheld])))]);

    public static Table OfPromises(IReadOnlyList<ReadFilm> films) => new(
        "state-promises",
        "shares that are promised: measured-wrong at most 1.5 % where it matters; either-side at most 25 %, withheld at most 10 % on uninjured well-taken films from 5 years on; "
            + "either-side by redraws, by two constructions alone, films whose true constructions lie apart, and measured-wrong if redraws alone decided",
        [
            "view", "films", "measurement", "n", "measuredWrong", "wrongShare", "eitherSideShare", "withheldShare", "kept",
            "redrawShare", "constructionsShare", "trulyApartShare", "wrongByRedrawsShare",
        ],
        [.. PromiseTables.ByView(films).SelectMany(v => Names(v.Films).SelectMany(name => Promises(v.View, name, v.Films)))]);

    private static IEnumerable<IReadOnlyList<object>> Promises(string view, string name, List<ReadFilm> films)
    {
        if (name.StartsWith("anterior-humeral-line", StringComparison.Ordinal))
        {
            yield return Row("true position below 1/3 or above 2/3", Count(name, films, truth => truth is < 1.0 / 3 or > 2.0 / 3), wrongOnly: true);
        }
        else if (name.StartsWith("radiocapitellar-line", StringComparison.Ordinal))
        {
            yield return Row("true offset beyond 0.5", Count(name, films, truth => Math.Abs(truth) > 0.5), wrongOnly: true);
        }

        var calm = films.FindAll(f => f.Score.Injuries.Count == 0 && f.Score.AgeMonths >= 60 && Adequate.Holds(f.Truth.Simulated));
        yield return Row("uninjured, well taken, from 5 y", Count(name, calm, _ => true), wrongOnly: false);

        IReadOnlyList<object> Row(string which, Counts c, bool wrongOnly)
        {
            var (wrong, either, withheld) = (PromiseTables.Share(c.Wrong, c.N), PromiseTables.Share(c.Either, c.N), PromiseTables.Share(c.Withheld, c.N));
            return
            [
                view, which, name, c.N, c.Wrong, wrong, either, withheld, c.N == 0 ? "" : wrongOnly ? wrong <= 0.015 : either <= 0.25 && withheld <= 0.1,
                PromiseTables.Share(c.Redraw, c.N), PromiseTables.Share(c.Either - c.Redraw, c.N), PromiseTables.Share(c.TrulyApart, c.N),
                PromiseTables.Share(c.Wrong + c.WrongUnderEither, c.N),
            ];
        }
    }

    private static IEnumerable<string> Names(List<ReadFilm> films) => ViewMeasurements.Of(films[0].Truth.View.Name)
        .Where(m => m.DecisionLimits(Patient.Unknown).Count > 0 || m.DecisionLimits(new Patient(480, null)).Count > 0)
        .Select(m => m.Name);

    private static Counts Count(string name, List<ReadFilm> films, Func<double, bool> isTrueValue)
    {
        var definition = ViewMeasurements.Of(films.Count == 0 ? View.Lateral : films[0].Truth.View.Name).FirstOrDefault(m => m.Name == name);
        int n = 0, right = 0, wrong = 0, either = 0, withheld = 0, redraw = 0, apart = 0, wrongUnder = 0;
        foreach (var film in films)
        {
            if (film.Truth.Measurements.FirstOrDefault(m => m.Name == name)?.Value is not { } truth || !isTrueValue(truth))
            {
                continue;
            }

            n++;
            var limits = definition!.DecisionLimits(film.Reading.Patient);
            apart += film.Truth.Measurements.FirstOrDefault(m => m.Name == definition.OtherConstruction)?.Value is { } other && Side(other, limits) != Side(truth, limits) ? 1 : 0;
            switch (film.Reading.Measurements.FirstOrDefault(m => m.Name == name))
            {
                case { State: MeasurementState.Measured, Value: { } value }:
                    _ = Side(value, limits) == Side(truth, limits) ? right++ : wrong++;
                    break;
                case { State: MeasurementState.EitherSide } crossing when crossing.Reasons.Contains(ReasonCodes.IntervalCrossesLimit, StringComparer.Ordinal):
                    either++;
                    redraw++;
                    break;
                case { State: MeasurementState.EitherSide } differing:
                    either++;
                    wrongUnder += Side(differing.Value!.Value, limits) == Side(truth, limits) ? 0 : 1;
                    break;
                default:
                    withheld++;
                    break;
            }
        }

        return new Counts(n, right, wrong, either, withheld, redraw, apart, wrongUnder);
    }

    private static int Side(double value, IReadOnlyList<double> limits) => limits.Count(l => value >= l);

    /// <param name="N">Films whose truth has the value.</param>
    /// <param name="Right">Measured on the right side.</param>
    /// <param name="Wrong">Measured on the wrong side.</param>
    /// <param name="Either">Either-side for whatever reason.</param>
    /// <param name="Withheld">Withheld, or the film refused.</param>
    /// <param name="Redraw">Either-side because redraws cross a limit.</param>
    /// <param name="TrulyApart">Films on which the other construction, too, has a true value, and on another side.</param>
    /// <param name="WrongUnderEither">Either-side for the other construction alone, with the own value on the wrong side.</param>
    private sealed record Counts(int N, int Right, int Wrong, int Either, int Withheld, int Redraw, int TrulyApart, int WrongUnderEither);
}
