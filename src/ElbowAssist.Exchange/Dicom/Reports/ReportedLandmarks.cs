using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>Positions of landmarks out of a structured report. Values and lines in it are left alone: they follow from the positions.</summary>
public sealed record ReportedLandmarks
{
    /// <summary>SOP Instance UID of the film the positions are on.</summary>
    public required string FilmSopInstanceUid { get; init; }

    /// <summary>The view whose landmarks these are.</summary>
    public required View View { get; init; }

    /// <summary>All landmarks of the view in its fixed order; one that the report leaves out has no position.</summary>
    public required IReadOnlyList<Landmark> Landmarks { get; init; }

    /// <summary>True if a person is named as having made the report.</summary>
    public required bool ByPerson { get; init; }

    /// <summary>
    /// These positions beside the proposals they came from: a landmark that was not moved keeps its spread and its source,
    /// one that was moved, or added, is the reader's; one that the report no longer has is gone.
    /// </summary>
    /// <param name="proposals">Landmarks of the reading that was exported.</param>
    public ReportedLandmarks Against(IReadOnlyList<Landmark> proposals)
    {
        // Reports and browser viewers carry single-precision coordinates; a hundredth of a pixel is no move.
        const double StayedWithin = 0.01;
        var before = proposals.ToDictionary(l => l.Name, StringComparer.Ordinal);
        return this with
        {
            Landmarks = [.. Landmarks.Select(l =>
                l.Position is { } now && before.TryGetValue(l.Name, out var old) && old.Position is { } then && now.DistanceTo(then) <= StayedWithin
                    ? old
                    : l)],
        };
    }
}
