using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Scoring;

/// <summary>How one reading compares with what is known to be true of its film.</summary>
public sealed record FilmScore
{
    /// <summary>File name of the film.</summary>
    public required string File { get; init; }

    /// <summary>The true view.</summary>
    public required View View { get; init; }

    /// <summary>Age in months, or null if unknown.</summary>
    public required int? AgeMonths { get; init; }

    /// <summary>Names of the injuries; empty for none.</summary>
    public required IReadOnlyList<string> Injuries { get; init; }

    /// <summary>True rotation away from the view in degrees, or null if unknown.</summary>
    public required double? TrueViewErrorDegrees { get; init; }

    /// <summary>The view the reading took.</summary>
    public required View ReadView { get; init; }

    /// <summary>Estimated minus true rotation in degrees, or null if either is missing.</summary>
    public required double? ViewErrorDifference { get; init; }

    /// <summary>Whether the whole film was refused.</summary>
    public required bool Refused { get; init; }

    /// <summary>Reason codes of the reading.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary><c>mm</c>, or <c>px</c> where the film has no spacing.</summary>
    public required string LengthUnit { get; init; }

    /// <summary>One entry per landmark of the view.</summary>
    public required IReadOnlyList<LandmarkScore> Landmarks { get; init; }

    /// <summary>One entry per line that both the reading and the truth have.</summary>
    public required IReadOnlyList<LineScore> Lines { get; init; }

    /// <summary>One entry per measurement with a true value.</summary>
    public required IReadOnlyList<MeasurementScore> Measurements { get; init; }
}

/// <summary>The error of one landmark. Errors are null unless it is truly visible and was given a position.</summary>
/// <param name="Name">Landmark.</param>
/// <param name="Kind">Point or contour.</param>
/// <param name="TrulyVisible">Whether it can be seen on the film.</param>
/// <param name="ReportedVisible">Whether the reading gave it a position.</param>
/// <param name="Radial">Distance from the truth.</param>
/// <param name="Normal">Distance across the outline, for contour landmarks.</param>
/// <param name="Slip">Distance along the outline, for contour landmarks.</param>
/// <param name="Mahalanobis">Squared distance in units of the stated covariance, where one is stated.</param>
public sealed record LandmarkScore(
    string Name,
    LandmarkKind Kind,
    bool TrulyVisible,
    bool ReportedVisible,
    double? Radial,
    double? Normal,
    double? Slip,
    double? Mahalanobis);

/// <summary>The error of a drawn line.</summary>
/// <param name="Name">Line, named after the measurement it serves.</param>
/// <param name="AngleDegrees">Acute angle between the two lines.</param>
/// <param name="Offset">Distance of the true line's anchor point from the drawn line.</param>
public sealed record LineScore(string Name, double AngleDegrees, double Offset);

/// <summary>The error of one measurement.</summary>
/// <param name="Name">Measurement.</param>
/// <param name="Unit">Unit of value and error.</param>
/// <param name="State">State in the reading.</param>
/// <param name="Truth">True value.</param>
/// <param name="Error">Value minus truth, or null if withheld.</param>
/// <param name="Redraw95">Redraw interval, or null if withheld.</param>
/// <param name="Zones">Stated probability of each zone, or null.</param>
/// <param name="TrueZone">Zone of the true value, or null.</param>
public sealed record MeasurementScore(
    string Name,
    string Unit,
    MeasurementState State,
    double Truth,
    double? Error,
    Interval? Redraw95,
    IReadOnlyDictionary<string, double>? Zones,
    string? TrueZone)
{
    /// <summary>Whether the redraw interval holds the true value; null if withheld.</summary>
    public bool? Covered => Redraw95 is { } interval ? interval.Low <= Truth && Truth <= interval.High : null;
}
