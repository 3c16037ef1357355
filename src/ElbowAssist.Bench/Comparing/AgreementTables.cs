using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Statistics;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;

namespace ElbowAssist.Bench.Comparing;

/// <summary>How far raters agree pair by pair: distances of landmarks, differences of measurements, zones.</summary>
internal static class AgreementTables
{
    // A correlation of fewer films says nothing.
    private const int FewestFilms = 3;

    public static Table Landmarks(Contest contest, IReadOnlyList<(Rater First, Rater Second)> pairs) => new(
        "landmark-agreement",
        "distances between the landmarks of two raters; interval of the mean by bootstrap of patients",
        ["first", "second", "view", "unit", "films", "n", "mean", "meanLow", "meanHigh", "sd", "p25", "median", "p75", "p90", "p95", "largest", "within2", "within4"],
        [.. pairs.SelectMany(p => Shared(contest, p.First, p.Second).GroupBy(f => (f.Truth.View.Name, Unit(f))).OrderBy(g => g.Key.Name).ThenBy(g => g.Key.Item2, StringComparer.Ordinal)
            .Select(g => Distances(p.First, p.Second, [.. g], g.Key.Item2)))]);

    public static Table Measurements(Contest contest, IReadOnlyList<(Rater First, Rater Second)> pairs) => new(
        "measurement-agreement",
        "measurements of two raters: bias and 95 % limits of agreement with their intervals (Bland and Altman), intraclass correlations with intervals, weighted kappa of zones with interval; films count one by one, also those of one patient",
        [
            "first", "second", "view", "measurement", "unit", "films", "bias", "biasLow", "biasHigh", "sd", "lowerLimit", "lowerLimitLow", "lowerLimitHigh", "upperLimit", "upperLimitLow", "upperLimitHigh",
            "icc21", "icc21Low", "icc21High", "icc31", "icc31Low", "icc31High", "kappa", "kappaLow", "kappaHigh",
        ],
        [.. pairs.SelectMany(p => Shared(contest, p.First, p.Second).GroupBy(f => f.Truth.View.Name).OrderBy(g => g.Key)
            .SelectMany(g => ViewMeasurements.Of(g.Key).Select(m => Values(p.First, p.Second, [.. g], m)).OfType<IReadOnlyList<object>>()))]);

    private static IReadOnlyList<LabelledFilm> Shared(Contest contest, Rater first, Rater second) =>
        [.. contest.Dataset.Films.Where(f => first.Films.ContainsKey(f.File) && second.Films.ContainsKey(f.File))];

    private static string Unit(LabelledFilm film) => film.Truth.Image.ColumnSpacingMm is null ? "px" : "mm";

    private static IReadOnlyList<object> Distances(Rater first, Rater second, List<LabelledFilm> films, string unit)
    {
        var byPatient = films.GroupBy(f => f.Patient, StringComparer.Ordinal).Select(p => (IReadOnlyList<double>)[.. p.SelectMany(f => Distances(first, second, f))]).ToList();
        var all = byPatient.SelectMany(d => d).ToList();
        double Within(double distance) => unit == "mm" ? PromiseTables.Share(all.Count(d => d <= distance), all.Count) : double.NaN;
        return
        [
            first.Name, second.Name, Vocabularies.View.WordOf(films[0].Truth.View.Name), unit, films.Count, all.Count, .. Distribution.Of(ErrorSummary.Of(byPatient)), Within(2), Within(4),
        ];
    }

    /// <summary>Distances on one film in mm, or pixels without a spacing.</summary>
    internal static IEnumerable<double> Distances(Rater first, Rater second, LabelledFilm film)
    {
        var scale = FilmScale.Of(film.Truth.Image.RowSpacingMm, film.Truth.Image.ColumnSpacingMm);
        var (one, other) = (first.Films[film.File].Places, second.Films[film.File].Places);
        return one.Where(p => other.ContainsKey(p.Key)).Select(p => scale.Scale(p.Value).DistanceTo(scale.Scale(other[p.Key])));
    }

    private static IReadOnlyList<object>? Values(Rater first, Rater second, List<LabelledFilm> films, MeasurementDefinition measurement)
    {
        var pairs = films.Select(f => (First: Value(first, f), Second: Value(second, f))).Where(v => v.First is not null && v.Second is not null)
            .Select(v => (First: v.First!.Value, Second: v.Second!.Value)).ToList();
        if (pairs.Count < FewestFilms)
        {
            return null;
        }

        double[] one = [.. pairs.Select(p => p.First)], other = [.. pairs.Select(p => p.Second)];
        var agreement = BlandAltman.Of(one, other);
        var table = new double[pairs.Count, 2];
        for (var i = 0; i < pairs.Count; i++)
        {
            (table[i, 0], table[i, 1]) = pairs[i];
        }

        var (absolute, consistent) = (IntraclassCorrelation.AbsoluteAgreement(table), IntraclassCorrelation.Consistency(table));
        var kappa = Zones(measurement, one, other);
        return
        [
            first.Name, second.Name, Vocabularies.View.WordOf(films[0].Truth.View.Name), measurement.Name, measurement.Unit, pairs.Count,
            agreement.Bias, agreement.Bias - agreement.BiasMargin, agreement.Bias + agreement.BiasMargin, agreement.StandardDeviation,
            agreement.LowerLimit, agreement.LowerLimit - agreement.LimitMargin, agreement.LowerLimit + agreement.LimitMargin,
            agreement.UpperLimit, agreement.UpperLimit - agreement.LimitMargin, agreement.UpperLimit + agreement.LimitMargin,
            absolute.Value, absolute.Low, absolute.High, consistent.Value, consistent.Low, consistent.High, kappa.Value, kappa.Low, kappa.High,
        ];

        double? Value(Rater rater, LabelledFilm film) => rater.Films[film.File].Values.TryGetValue(measurement.Name, out var v) ? v : null;
    }

    private static WeightedKappa Zones(MeasurementDefinition measurement, double[] one, double[] other)
    {
        var zones = measurement.Zones.ToList();
        if (zones.Count < 2)
        {
            return new WeightedKappa(double.NaN, double.NaN, double.NaN);
        }

        int[] Of(double[] values) => [.. values.Select(v => zones.FindIndex(z => z.Holds(v)))];
        return WeightedKappa.Of(Of(one), Of(other), zones.Count);
    }
}
