using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Objects;

namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>
/// Takes landmark positions out of a structured report: one of ours, or one that a viewer saved after a person moved
/// points. A landmark is known by its finding code alone, because viewers keep little else.
/// </summary>
public static class StructuredReportReader
{
    /// <summary>Reads the positions.</summary>
    /// <param name="file">The whole file.</param>
    /// <param name="limits">What the file may ask for; null for the default.</param>
    /// <exception cref="DicomFormatException">Damaged, no measurement report, no landmarks, or landmarks of more than one film or view.</exception>
    public static ReportedLandmarks Read(ReadOnlyMemory<byte> file, DicomLimits? limits = null)
    {
        var dataset = DicomFile.Parse(file, limits ?? DicomLimits.Default).Dataset;
        if (dataset.Text(Tag.SopClassUid) is not (Uids.EnhancedReport or Uids.ComprehensiveReport or Uids.Comprehensive3DReport))
        {
            throw new DicomFormatException("The file is no structured report of measurements; give an SR object.");
        }

        var root = ContentEncoding.Read(dataset);
        var byPerson = root.Children.Any(c => c.ValueType == "PNAME" || StandardCodes.Person.Matches(c.Code));
        var byDevice = root.Children.Any(c => StandardCodes.DeviceObserverUid.Matches(c.Concept));
        var placed = Groups(root).Select(g => Place(g, byDevice)).OfType<Placed>().ToList();
        if (placed.Count == 0)
        {
            throw new DicomFormatException("The report holds no landmark of this project; export the reading again and move points in that report.");
        }

        if (placed.DistinctBy(p => p.Landmark.Name).Count() != placed.Count)
        {
            throw new DicomFormatException("The report holds one landmark twice; delete the one that does not count and save it again.");
        }

        if (placed.Select(p => p.Film).Distinct().ToList() is not [{ } film])
        {
            throw new DicomFormatException("The landmarks of the report lie on more than one film, or it does not say on which; give a report of a single film.");
        }

        var view = ViewOf(placed);
        var byName = placed.ToDictionary(p => p.Landmark.Name, p => p.Landmark, StringComparer.Ordinal);
        return new()
        {
            FilmSopInstanceUid = film,
            View = view,
            ByPerson = byPerson,
            Landmarks = [.. LandmarkSet.Of(view)!.Landmarks.Select(d => byName.TryGetValue(d.Name, out var landmark)
                ? landmark with { Kind = d.Kind }
                : new Landmark(d.Name, d.Kind, null, null, 0, byDevice && !byPerson ? LandmarkSource.Model : LandmarkSource.Reader))],
        };
    }

    private sealed record Placed(Landmark Landmark, string? Film);

    private static IEnumerable<ContentItem> Groups(ContentItem item) => StandardCodes.MeasurementGroup.Matches(item.Concept)
        ? [item]
        : item.Children.SelectMany(Groups);

    private static Placed? Place(ContentItem group, bool byDevice)
    {
        var finding = group.Children.FirstOrDefault(c => StandardCodes.Finding.Matches(c.Concept))?.Code;
        var shapes = group.Children.Concat(group.Children.SelectMany(c => c.Children)).Where(c => c.ValueType == "SCOORD").ToList();
        if (PrivateCodes.LandmarkName(finding) is not { } name ||
            shapes.FirstOrDefault(s => s.Graphic == "POINT") is not { Points: [var position, ..] } shape || !position.IsFinite)
        {
            return null;
        }

        var byReader = !byDevice || group.Children.Any(c => PrivateCodes.Manual.Matches(c.Code));
        var ellipse = shapes.FirstOrDefault(s => s.Graphic == "ELLIPSE");
        var certainty = group.Children.FirstOrDefault(c => StandardCodes.CertaintyOfFeature.Matches(c.Concept))?.Number;
        var landmark = new Landmark(
            name,
            default,
            position,
            byDevice && ellipse is not null ? SpreadEllipse.FromEnds(ellipse.Points) : null,
            byDevice && certainty is { } percent ? Math.Clamp(percent / 100, 0, 1) : 1,
            byReader ? LandmarkSource.Reader : LandmarkSource.Model);
        return new(landmark, shape.Children.FirstOrDefault(c => c.Image is not null)?.Image?.SopInstanceUid);
    }

    private static View ViewOf(IReadOnlyList<Placed> placed)
    {
        var fitting = new[] { View.Lateral, View.Ap }
            .Where(v => placed.All(p => LandmarkSet.Of(v)!.IndexOf(p.Landmark.Name) >= 0))
            .ToList();
        return fitting.Count == 1 ? fitting[0] : throw new DicomFormatException(
            fitting.Count == 0
                ? "The report mixes landmarks of the lateral and the AP view; give a report of a single film."
                : "The report holds too few landmarks to tell the view; keep more of them.");
    }
}
