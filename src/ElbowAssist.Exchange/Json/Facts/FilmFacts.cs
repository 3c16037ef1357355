using ElbowAssist.Anatomy;

namespace ElbowAssist.Exchange.Json.Facts;

/// <summary>What one source (an option, a sidecar, a DICOM header) says about a film; null where it is silent.</summary>
/// <param name="Source">Name of the source for sentences: <c>option</c>, <c>sidecar</c>, <c>DICOM header</c>.</param>
public sealed record FilmFacts(string Source)
{
    /// <summary>Distance between rows in the patient plane, mm.</summary>
    public double? RowSpacingMm { get; init; }

    /// <summary>Distance between columns in the patient plane, mm.</summary>
    public double? ColumnSpacingMm { get; init; }

    /// <summary>What to say of the spacing, such as the plane it holds in; null to name the source alone.</summary>
    public string? SpacingNote { get; init; }

    /// <summary>Age in completed months.</summary>
    public int? AgeMonths { get; init; }

    /// <summary>Sex.</summary>
    public Sex? Sex { get; init; }

    /// <summary>Side.</summary>
    public Side? Side { get; init; }

    /// <summary>Why and when the film was taken.</summary>
    public FilmContext? Context { get; init; }

    /// <summary>View.</summary>
    public View? View { get; init; }
}
