using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Objects;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using static ElbowAssist.Exchange.Dicom.Reports.ContentItem;

namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>
/// The groups of TID 1501: one for each laid landmark and each measurement with a value. The tracking identifier names
/// the tool with which a browser viewer shows the group as an annotation that can be moved; the first number of a group
/// carries its geometry.
/// </summary>
internal sealed class MeasurementGroups(FilmReading reading, DicomSource source)
{
    private readonly (Point TopLeft, Point BottomRight) field = LineSegments.Field(reading);

    public IReadOnlyList<ContentItem> All() =>
    [
        .. reading.Landmarks.Where(l => l.Position is not null).Select(OfLandmark),
        .. reading.Measurements.Where(m => m.Value is not null).Select(OfMeasurement),
    ];

    private ContentItem OfLandmark(Landmark landmark)
    {
        var code = PrivateCodes.Landmark(landmark.Name);
        var point = OfPoints("POINT", [landmark.Position!.Value], source);
        var certainty = OfNumber(
            Contains, StandardCodes.CertaintyOfFeature, Math.Round(100 * landmark.Visibility, 1), StandardCodes.Unit("%"));
        ContentItem[] numbers = landmark.Covariance is { } spread
            ? [Spread(SpreadEllipse.Of(landmark.Position.Value, spread), point), certainty]
            : [certainty with { Children = [point] }];
        return Group(
            "Probe", code, landmark.Source == LandmarkSource.Reader ? PrivateCodes.Manual : PrivateCodes.HeatMap,
            Site(landmark.Name), landmark.Source == LandmarkSource.Model, numbers, landmark.Name);
    }

    private ContentItem Spread(SpreadEllipse ellipse, ContentItem point)
    {
        var spacing = reading.Image is { RowSpacingMm: { } row, ColumnSpacingMm: { } column } ? Math.Sqrt(row * column) : (double?)null;
        var shape = ellipse.Minor.Length > 1e-3 ? [point, OfPoints("ELLIPSE", ellipse.Ends, source)] : new[] { point };
        return spacing is { } mm
            ? OfNumber(Contains, PrivateCodes.Region95, Rounded(ellipse.Radius * mm), StandardCodes.Unit("mm"), shape)
            : OfNumber(Contains, PrivateCodes.Region95, Rounded(ellipse.Radius), StandardCodes.Unit("px"), shape);
    }

    private ContentItem OfMeasurement(Measurement measurement)
    {
        var code = PrivateCodes.Measurement(measurement.Name);
        var unit = StandardCodes.Unit(measurement.Unit);
        var segments = reading.Lines.Where(l => l.Name == measurement.Name)
            .Select(l => LineSegments.Within(l, field)).OfType<(Point From, Point To)>().ToList();
        var tool = segments.Count switch
        {
            1 => "ArrowAnnotate",
            2 => "CobbAngle",
            _ => null,
        };
        var properties = new List<ContentItem>();
        if (measurement.Redraw95 is { } interval)
        {
            var value = measurement.Value!.Value;
            properties.Add(OfNumber(HasProperties, StandardCodes.UpperUncertainty, Rounded(Math.Max(0, interval.High - value)), unit));
            properties.Add(OfNumber(HasProperties, StandardCodes.LowerUncertainty, Rounded(Math.Max(0, value - interval.Low)), unit));
        }

        if (tool is not null)
        {
            properties.Add(OfPoints("POLYLINE", [.. segments.SelectMany(s => new[] { s.From, s.To })], source));
        }

        var number = OfNumber(Contains, code, measurement.Value!.Value, unit, properties);
        var label = measurement.State == MeasurementState.EitherSide ? code.Meaning + " (either side of a decision limit)" : code.Meaning;
        return Group(tool, code, PrivateCodes.LeastSquares, StandardCodes.ElbowJoint, byModel: true, [number], label);
    }

    private ContentItem Group(
        string? tool, Code finding, Code method, Code site, bool byModel, IReadOnlyList<ContentItem> numbers, string label)
    {
        var identifier = tool is null ? $"ElbowAssist.{finding.Value}" : $"Cornerstone3DTools@^0.1.0:{tool}:ElbowAssist.{finding.Value}";
        var side = StandardCodes.Of(reading.Side) is { } laterality
            ? new[] { OfCode(HasConceptModifier, StandardCodes.Laterality, laterality) }
            : [];
        return Container(
            Contains,
            StandardCodes.MeasurementGroup,
            [
                OfText(HasObservationContext, StandardCodes.TrackingIdentifier, identifier),
                OfUid(HasObservationContext, StandardCodes.TrackingUniqueIdentifier, Uids.FromName("track", source.SopInstanceUid, finding.Value)),
                OfCode(Contains, StandardCodes.Finding, finding),
                OfCode(HasConceptModifier, StandardCodes.MeasurementMethod, method),
                OfCode(HasConceptModifier, StandardCodes.FindingSite, site, side),
                .. byModel ? Algorithm() : [],
                .. numbers,
                OfText(Contains, StandardCodes.Comment, Wording.Label(label)),
            ]);
    }

    /// <summary>The landmark model, named as in the contributing equipment.</summary>
    private IEnumerable<ContentItem> Algorithm()
    {
        var own = reading.View.Name == View.Ap ? "ap" : "lateral";
        if ((reading.Models.FirstOrDefault(m => m.Name == own) ?? (reading.Models is [.., var last] ? last : null)) is not { } model)
        {
            return [];
        }

        return
        [
            OfText(HasConceptModifier, StandardCodes.AlgorithmName, AsciiText.Cut(model.Name, 64)),
            OfText(HasConceptModifier, StandardCodes.AlgorithmVersion, ObjectHeader.ModelVersion(model)),
        ];
    }

    private static Code Site(string landmark) => landmark.Split('.')[0] switch
    {
        "humerus" or "capitellum" or "trochlea" => StandardCodes.DistalHumerus,
        "radius" => StandardCodes.ProximalRadius,
        "ulna" => StandardCodes.ProximalUlna,
        _ => StandardCodes.ElbowJoint,
    };

    private static double Rounded(double value) => Math.Round(value, 4);
}
