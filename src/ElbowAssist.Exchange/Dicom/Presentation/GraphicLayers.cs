using System.Globalization;
using System.Text;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Objects;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Presentation;

/// <summary>A layer a viewer can switch: its name, what it shows, its colour and its content.</summary>
internal sealed record GraphicLayer(
    string Name, string Description, GraphicInk Ink, IReadOnlyList<DicomDataset> Graphics, IReadOnlyList<DicomDataset> Texts)
{
    public bool IsEmpty => Graphics.Count + Texts.Count == 0;
}

/// <summary>What a reading shows on a film, in layers from the words up to the lines.</summary>
internal static class GraphicLayers
{
    // 95 of 100 redraws under a normal distribution.
    private const double BandFactor = 1.96;
    private const int BandSteps = 12;

    /// <summary>The layers that are not empty. Every line, point, band and label is a proposal.</summary>
    public static IReadOnlyList<GraphicLayer> Of(FilmReading reading, Encoding encoding)
    {
        var field = LineSegments.Field(reading);
        var laid = reading.Landmarks.Where(l => l.Position is not null).ToList();
        var segments = reading.Lines.Select(l => (Line: l, Ends: LineSegments.Within(l, field)))
            .Where(s => s.Ends is not null).Select(s => (s.Line, Ends: s.Ends!.Value)).ToList();
        var arm = Math.Max(2, Math.Max(reading.Image.Width, reading.Image.Height) / 200.0);
        GraphicLayer[] layers =
        [
            new("EA_TEXT", Wording.Label("words and values"), GraphicInk.Tool, [], [.. Texts(reading, segments, encoding)]),
            new("EA_LINES", Wording.Label("lines and circles"), GraphicInk.Tool,
                [
                    .. segments.Select(s => GraphicItems.Polyline([s.Ends.From, s.Ends.To], GraphicInk.Tool)),
                    .. reading.Circles.Select(c => GraphicItems.Circle(c.Centre, c.Radius, GraphicInk.Tool)),
                ],
                []),
            new("EA_BANDS", Wording.Label("where lines would fall in 95 of 100 redraws"), GraphicInk.Tool,
                [.. segments.Where(s => s.Line.Spread is not null).Select(Band)], []),
            new("EA_POINTS", Wording.Label("landmarks of the model"), GraphicInk.Tool,
                [.. laid.Where(l => l.Source == LandmarkSource.Model).SelectMany(l => GraphicItems.Cross(l.Position!.Value, arm, GraphicInk.Tool))], []),
            new("EA_READER", Wording.Label("landmarks placed by a reader"), GraphicInk.Reader,
                [.. laid.Where(l => l.Source == LandmarkSource.Reader).SelectMany(l => GraphicItems.Cross(l.Position!.Value, arm, GraphicInk.Reader))], []),
            new("EA_SPREAD", Wording.Label("where landmarks would fall in 95 of 100 redraws"), GraphicInk.Tool,
                [.. laid.Select(Ellipse).OfType<DicomDataset>()], []),
        ];
        return [.. layers.Where(l => !l.IsEmpty)];
    }

    private static DicomDataset? Ellipse(Landmark landmark) =>
        landmark.Covariance is { } spread && SpreadEllipse.Of(landmark.Position!.Value, spread) is { } ellipse && ellipse.Minor.Length > 1e-3
            ? GraphicItems.Ellipse(ellipse.Ends, GraphicInk.Tool)
            : null;

    private static DicomDataset Band((NamedLine Line, (Point From, Point To) Ends) segment)
    {
        var line = new Line(segment.Line.Point, segment.Line.Direction.Unit);
        var (from, to) = (line.Direction.Dot(segment.Ends.From - line.Point), line.Direction.Dot(segment.Ends.To - line.Point));
        var edges = Enumerable.Range(0, BandSteps + 1).Select(i =>
        {
            var along = from + ((to - from) * i / BandSteps);
            var half = line.Direction.Perpendicular * (BandFactor * segment.Line.Spread!.Value.StandardDeviationAt(along));
            return (Centre: line.Point + (line.Direction * along), Half: half);
        }).ToList();
        List<Point> outline = [.. edges.Select(e => e.Centre + e.Half), .. edges.AsEnumerable().Reverse().Select(e => e.Centre - e.Half)];
        return GraphicItems.Polyline([.. outline, outline[0]], GraphicInk.Tool);
    }

    private static IEnumerable<DicomDataset> Texts(
        FilmReading reading, IReadOnlyList<(NamedLine Line, (Point From, Point To) Ends)> segments, Encoding encoding)
    {
        var (width, height) = (reading.Image.Width, reading.Image.Height);
        var head = reading.Adequacy.Refused
            ? "no lines on this film. " + string.Join(" ", reading.Reasons.Select(r => r.Text))
            : "lines and landmarks laid by a program.";
        yield return GraphicItems.Box(
            $"{Wording.Label(head)}\r\n{Caution.LastSentence}", new Point(0, 0), new Point(width, height * 0.08), encoding);
        foreach (var measurement in reading.Measurements.Where(m => m.Value is not null))
        {
            if (segments.FirstOrDefault(s => s.Line.Name == measurement.Name) is { Line: not null } segment)
            {
                yield return GraphicItems.Label(Wording.Label(Words(measurement)), segment.Ends.To, encoding);
            }
        }
    }

    private static string Words(Measurement measurement)
    {
        var unit = measurement.Unit == "1" ? "" : " " + measurement.Unit;
        var format = measurement.Unit == "1" ? "0.00" : "0.0";
        string Figure(double value) => value.ToString(format, CultureInfo.InvariantCulture);
        var interval = measurement.Redraw95 is { } i ? $", redraw {Figure(i.Low)} to {Figure(i.High)}{unit}" : "";
        var state = measurement.State == MeasurementState.EitherSide ? ", either side of a decision limit" : "";
        return $"{PrivateCodes.Measurement(measurement.Name).Meaning} {Figure(measurement.Value!.Value)}{unit}{interval}{state}";
    }
}
