using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Exchange.Json;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Entrants against each other on the same films: paired by patient, corrected for the number of comparisons.</summary>
internal static class ComparisonTable
{
    private const int Seed = 20_001;

    public static Table Of(Contest contest)
    {
        var rows = Pairs(contest).ToList();
        var wilcoxon = HolmCorrection.Of(rows.ConvertAll(r => (double)r[^2]));
        var permutation = HolmCorrection.Of(rows.ConvertAll(r => (double)r[^1]));
        return new Table(
            "comparisons",
            "mean absolute error of two entrants where both laid the landmark or gave the value; what only one of them did is counted, not compared: difference of the patients' means with interval by bootstrap of patients, signed-rank and permutation tests, each corrected after Holm over this table",
            ["first", "second", "view", "what", "unit", "compared", "firstAlone", "secondAlone", "patients", "firstMean", "secondMean", "difference", "low", "high", "wilcoxonP", "permutationP", "wilcoxonHolmP", "permutationHolmP"],
            [.. rows.Select((r, i) => (IReadOnlyList<object>)[.. r, wilcoxon[i], permutation[i]])]);
    }

    private static IEnumerable<IReadOnlyList<object>> Pairs(Contest contest)
    {
        for (var i = 0; i < contest.Entrants.Count; i++)
        {
            for (var j = i + 1; j < contest.Entrants.Count; j++)
            {
                var (first, second) = (contest.Entrants[i].Name, contest.Entrants[j].Name);
                var other = contest.Scored[second].ToDictionary(f => f.Film.File, StringComparer.Ordinal);
                var both = contest.Scored[first].Where(f => other.ContainsKey(f.Film.File)).Select(f => (First: f, Second: other[f.Film.File]));
                foreach (var panel in both.GroupBy(f => (View: f.First.Film.Truth.View.Name, f.First.Score.LengthUnit)).OrderBy(g => g.Key.View).ThenBy(g => g.Key.LengthUnit, StringComparer.Ordinal))
                {
                    var films = panel.ToList();
                    var view = Vocabularies.View.WordOf(panel.Key.View);
                    yield return Row([first, second, view, "landmarks, radial", panel.Key.LengthUnit], films, f => f.Landmarks.Select(l => (l.Name, l.Radial)));
                    foreach (var (name, unit) in films.SelectMany(f => f.First.Score.Measurements).Select(m => (m.Name, m.Unit)).Distinct().OrderBy(m => m.Name, StringComparer.Ordinal))
                    {
                        yield return Row([first, second, view, name, unit], films, f => f.Score.Measurements.Where(m => m.Name == name).Select(m => (m.Name, m.Error is { } e ? Math.Abs(e) : (double?)null)));
                    }
                }
            }
        }
    }

    private static IReadOnlyList<object> Row(
        IReadOnlyList<object> head, List<(ScoredFilm First, ScoredFilm Second)> films, Func<ScoredFilm, IEnumerable<(string Name, double? Error)>> errors)
    {
        List<(double First, double Second)> patients = [];
        int compared = 0, firstAlone = 0, secondAlone = 0;
        foreach (var patient in films.GroupBy(f => f.First.Film.Patient, StringComparer.Ordinal))
        {
            List<(double First, double Second)> paired = [];
            foreach (var (first, second) in patient)
            {
                var (one, other) = (Known(errors(first)), Known(errors(second)));
                var both = one.Keys.Where(other.ContainsKey).ToList();
                paired.AddRange(both.Select(name => (one[name], other[name])));
                (firstAlone, secondAlone) = (firstAlone + one.Count - both.Count, secondAlone + other.Count - both.Count);
            }

            compared += paired.Count;
            if (paired.Count > 0)
            {
                patients.Add((paired.Average(e => e.First), paired.Average(e => e.Second)));
            }
        }

        double[] differences = [.. patients.Select(p => p.First - p.Second)];
        var (low, high) = ClusterBootstrap.MeanInterval([.. differences.Select(d => (IReadOnlyList<double>)[d])], Seed);
        return
        [
            .. head, compared, firstAlone, secondAlone, patients.Count, Mean(patients.Select(p => p.First)), Mean(patients.Select(p => p.Second)), Mean(differences), low, high,
            WilcoxonSignedRank.Of(differences).P, SignFlipTest.TwoSided(differences, Seed),
        ];
    }

    private static Dictionary<string, double> Known(IEnumerable<(string Name, double? Error)> errors) =>
        errors.Where(e => e.Error is not null).ToDictionary(e => e.Name, e => e.Error!.Value, StringComparer.Ordinal);

    private static double Mean(IEnumerable<double> values) => values.DefaultIfEmpty(double.NaN).Average();
}
