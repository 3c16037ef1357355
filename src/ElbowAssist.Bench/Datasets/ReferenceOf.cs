using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Datasets;

/// <summary>The reference of a film that readers labelled.</summary>
internal static class ReferenceOf
{
    /// <summary>
    /// The mean of the places of those who laid landmarks without a tool's proposals (of everybody where nobody did). A
    /// landmark counts where more than half of them laid it; the measurements are laid through the means.
    /// </summary>
    public static TruthFile Placements(CocoImage image, View view, IReadOnlyList<Placement> placements)
    {
        var own = placements.Where(p => !p.WithProposals).ToList();
        var set = LandmarkSet.Of(view)!;
        var places = Mean(set, own.Count > 0 ? own : placements);
        var tangents = ContourTangents.Of(set, places);
        return new TruthFile
        {
            Image = new ImageFacts(image.File, image.Width, image.Height, image.RowSpacingMm, image.ColumnSpacingMm, image.RowSpacingMm is null ? "none" : "data set", ""),
            View = new ViewFinding(view, new Dictionary<string, double>(StringComparer.Ordinal), null),
            Side = image.Side,
            Patient = new Patient(image.AgeMonths, image.Sex),
            Context = FilmContext.Unknown,
            Landmarks = [.. set.Landmarks.Select((l, i) => new TrueLandmark(l.Name, l.Kind, places[i], tangents[i], places[i] is null ? 0 : 1))],
            Measurements = [.. Values(set, places, FilmScale.Of(image.RowSpacingMm, image.ColumnSpacingMm)).Select(Measurement.Exact)],
        };
    }

    /// <summary>Every construction that can be laid through places of the landmarks of a set, in its order.</summary>
    public static IEnumerable<MeasuredValue> Values(LandmarkSet set, IReadOnlyList<Point?> places, FilmScale scale) =>
        FilmMeasuring.Measure(LaidLandmarks.Exact(set, places, scale), RedrawOptions.Default).Where(v => v.Value is not null);

    /// <summary>Mean places in the order of a set; null where no more than half laid the landmark.</summary>
    public static IReadOnlyList<Point?> Mean(LandmarkSet set, IReadOnlyList<Placement> placements)
    {
        var laid = placements.SelectMany(p => p.Landmarks).ToLookup(l => l.Name, l => l.Position!.Value, StringComparer.Ordinal);
        return
        [
            .. set.Landmarks.Select(l => laid[l.Name].ToList()).Select(points => 2 * points.Count > placements.Count
                ? new Point(points.Average(p => p.X), points.Average(p => p.Y))
                : (Point?)null),
        ];
    }
}
