using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Fits;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Lines drawn by hand against lines of the same name by another rater, drawn or laid through landmarks.</summary>
internal static class LineAgreementTable
{
    public static Table Of(Contest contest, IReadOnlyList<(Rater First, Rater Second)> pairs) => new(
        "line-agreement",
        "lines drawn by hand against those of another rater: angle between them, and distance beside the reference's capitellum, across the second's line; intervals of the means by bootstrap of patients",
        [
            "first", "second", "view", "line", "unit", "films", "angleMean", "angleLow", "angleHigh", "angleMedian", "angleP95",
            "offsetMean", "offsetLow", "offsetHigh", "offsetMedian", "offsetP95", "ofCapitellumMean", "ofCapitellumP95",
        ],
        [.. pairs.SelectMany(p => Rows(contest, p.First, p.Second))]);

    private static IEnumerable<IReadOnlyList<object>> Rows(Contest contest, Rater first, Rater second) => contest.Dataset.Films
        .Where(f => first.Films.ContainsKey(f.File) && second.Films.ContainsKey(f.File))
        .SelectMany(f => Gaps(f, first.Films[f.File], second.Films[f.File]))
        .GroupBy(g => (g.Film.Truth.View.Name, g.Line, Unit: g.Film.Truth.Image.ColumnSpacingMm is null ? "px" : "mm"))
        .OrderBy(g => g.Key.Name).ThenBy(g => g.Key.Line, StringComparer.Ordinal).ThenBy(g => g.Key.Unit, StringComparer.Ordinal)
        .Select(g =>
        {
            ErrorSummary Summary(Func<(LabelledFilm Film, string Line, LineGap Gap, double Diameter), double> of) =>
                ErrorSummary.Of(g.GroupBy(x => x.Film.Patient, StringComparer.Ordinal).Select(p => (IReadOnlyList<double>)[.. p.Select(of)]))!;
            var (angle, offset, share) = (Summary(x => x.Gap.AngleDegrees), Summary(x => x.Gap.Offset), Summary(x => x.Gap.Offset / x.Diameter));
            return (IReadOnlyList<object>)
            [
                first.Name, second.Name, Vocabularies.View.WordOf(g.Key.Name), g.Key.Line, g.Key.Unit, g.Count(),
                angle.Mean, angle.MeanLow, angle.MeanHigh, angle.Median, angle.P95,
                offset.Mean, offset.MeanLow, offset.MeanHigh, offset.Median, offset.P95, share.Mean, share.P95,
            ];
        });

    private static IEnumerable<(LabelledFilm Film, string Line, LineGap Gap, double Diameter)> Gaps(LabelledFilm film, RatedFilm first, RatedFilm second)
    {
        var scale = FilmScale.Of(film.Truth.Image.RowSpacingMm, film.Truth.Image.ColumnSpacingMm);
        foreach (var name in first.Drawn.Concat(second.Drawn).Select(l => l.Name).Distinct(StringComparer.Ordinal))
        {
            if (first.LineOf(name) is { } one && second.LineOf(name) is { } other && Capitellum(film, scale) is var (centre, diameter) &&
                LineGap.Between(Scaled(one, scale), Scaled(other, scale), centre) is { } gap)
            {
                yield return (film, name, gap, diameter);
            }
        }
    }

    private static Line Scaled(Line line, FilmScale scale) => Line.Through(scale.Scale(line.Point), scale.Scale(line.Point + line.Direction));

    /// <summary>Centre and diameter of the reference's capitellum after scaling; on an AP its middle and width.</summary>
    private static (Point Centre, double Diameter)? Capitellum(LabelledFilm film, FilmScale scale)
    {
        var places = film.Truth.Landmarks.ToDictionary(l => l.Name, l => l.Position, StringComparer.Ordinal);
        Point? Place(string name) => places.GetValueOrDefault(name) is { } place ? scale.Scale(place) : null;
        if (film.Truth.View.Name == View.Ap)
        {
            return Place(LandmarkNames.CapitellumEdgeLateral) is { } lateral && Place(LandmarkNames.CapitellumEdgeMedial) is { } medial
                ? (Point.Midpoint(lateral, medial), lateral.DistanceTo(medial))
                : null;
        }

        Point[] rim = [.. film.Truth.Landmarks.Where(l => l.Name.StartsWith("capitellum.rim.", StringComparison.Ordinal)).Select(l => Place(l.Name)).OfType<Point>()];
        return CircleFit.Fit(rim, []) is var fit && fit.Exit.HasEstimate() ? (fit.Circle.Centre, 2 * fit.Circle.Radius) : null;
    }
}
