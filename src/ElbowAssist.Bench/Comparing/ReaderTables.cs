using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Exchange.Json;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Readers together: agreement of all of them, and whether it differs with a tool's proposals on view.</summary>
internal static class ReaderTables
{
    private const int Seed = 20_002;

    public static Table Together(Contest contest) => new(
        "readers-together",
        "intraclass correlations of all readers of a condition at once, over films that each of them measured",
        ["condition", "view", "measurement", "unit", "readers", "films", "icc21", "icc21Low", "icc21High", "icc31", "icc31Low", "icc31High"],
        [.. Conditions(contest).SelectMany(c => ViewMeasurements.Lateral.Concat(ViewMeasurements.Ap).Select(m => Together(c.Name, c.Readers, contest, m)).OfType<IReadOnlyList<object>>())]);

    public static Table WithAndWithout(Contest contest)
    {
        var rows = Pairs(contest).ToList();
        var corrected = HolmCorrection.Of(rows.ConvertAll(r => (double)r[^1]));
        return new Table(
            "readers-with-and-without",
            "distance between two readers on the same films without and with proposals on view: means by patient, their difference with interval by bootstrap of patients, signed-rank and permutation tests, the latter corrected after Holm",
            ["first", "second", "view", "unit", "patients", "without", "with", "difference", "low", "high", "wilcoxonP", "permutationP", "holmP"],
            [.. rows.Select((r, i) => (IReadOnlyList<object>)[.. r, corrected[i]])]);
    }

    private static IEnumerable<(string Name, List<Rater> Readers)> Conditions(Contest contest) =>
        Readers(contest).GroupBy(r => r.Role).OrderBy(g => g.Key).Select(g => (g.Key == RaterRole.Reader ? "without proposals" : "with proposals", g.ToList())).Where(c => c.Item2.Count > 1);

    private static IReadOnlyList<Rater> Readers(Contest contest) => Rater.Readers(contest.Dataset.Films.SelectMany(f => f.Placements.Select(p => (f, p))));

    private static IReadOnlyList<object>? Together(string condition, List<Rater> readers, Contest contest, MeasurementDefinition measurement)
    {
        var films = contest.Dataset.Films.Where(f => ViewMeasurements.Of(f.Truth.View.Name).Contains(measurement) && readers.TrueForAll(r => r.Films.TryGetValue(f.File, out var rated) && rated.Values.ContainsKey(measurement.Name))).ToList();
        if (films.Count < 3)
        {
            return null;
        }

        var table = new double[films.Count, readers.Count];
        for (var i = 0; i < films.Count; i++)
        {
            for (var j = 0; j < readers.Count; j++)
            {
                table[i, j] = readers[j].Films[films[i].File].Values[measurement.Name];
            }
        }

        var (absolute, consistent) = (IntraclassCorrelation.AbsoluteAgreement(table), IntraclassCorrelation.Consistency(table));
        return
        [
            condition, Vocabularies.View.WordOf(films[0].Truth.View.Name), measurement.Name, measurement.Unit, readers.Count, films.Count,
            absolute.Value, absolute.Low, absolute.High, consistent.Value, consistent.Low, consistent.High,
        ];
    }

    private static IEnumerable<IReadOnlyList<object>> Pairs(Contest contest)
    {
        var readers = Readers(contest);
        var both = readers.Where(r => r.Role == RaterRole.Reader)
            .Select(r => (Without: r, With: readers.FirstOrDefault(w => w.Role == RaterRole.ReaderWithProposals && w.Reader == r.Reader))).Where(r => r.With is not null).ToList();
        for (var i = 0; i < both.Count; i++)
        {
            for (var j = i + 1; j < both.Count; j++)
            {
                var films = contest.Dataset.Films.Where(f => new[] { both[i].Without, both[i].With!, both[j].Without, both[j].With! }.All(r => r.Films.ContainsKey(f.File)));
                foreach (var panel in films.GroupBy(f => (f.Truth.View.Name, InMm: f.Truth.Image.ColumnSpacingMm is not null)).OrderBy(g => g.Key.Name).ThenBy(g => g.Key.InMm))
                {
                    yield return Row(both[i].Without, both[i].With!, both[j].Without, both[j].With!, [.. panel], panel.Key.InMm ? "mm" : "px");
                }
            }
        }
    }

    private static IReadOnlyList<object> Row(Rater first, Rater firstWith, Rater second, Rater secondWith, List<LabelledFilm> films, string unit)
    {
        var byPatient = films.GroupBy(f => f.Patient, StringComparer.Ordinal).Select(p => (
            Without: p.Average(f => AgreementTables.Distances(first, second, f).DefaultIfEmpty(double.NaN).Average()),
            With: p.Average(f => AgreementTables.Distances(firstWith, secondWith, f).DefaultIfEmpty(double.NaN).Average())))
            .Where(p => !double.IsNaN(p.Without) && !double.IsNaN(p.With)).ToList();
        double[] differences = [.. byPatient.Select(p => p.With - p.Without)];
        var (low, high) = ClusterBootstrap.MeanInterval([.. differences.Select(d => (IReadOnlyList<double>)[d])], Seed);
        return
        [
            first.Name, second.Name, Vocabularies.View.WordOf(films[0].Truth.View.Name), unit, byPatient.Count, Mean(byPatient.Select(p => p.Without)), Mean(byPatient.Select(p => p.With)),
            Mean(differences), low, high, WilcoxonSignedRank.Of(differences).P, SignFlipTest.TwoSided(differences, Seed),
        ];
    }

    private static double Mean(IEnumerable<double> values) => values.DefaultIfEmpty(double.NaN).Average();
}
