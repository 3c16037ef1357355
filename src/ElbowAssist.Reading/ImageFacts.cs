namespace ElbowAssist.Reading;

/// <summary>The film as read.</summary>
/// <param name="File">File name without its folder.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="RowSpacingMm">Distance between rows in millimetres in the patient plane, or null if unknown.</param>
/// <param name="ColumnSpacingMm">Distance between columns in millimetres, or null if unknown.</param>
/// <param name="SpacingSource">Where the spacing comes from and whether magnification was corrected, e.g. <c>sidecar</c>, <c>option</c>, <c>none</c>.</param>
/// <param name="Sha256">SHA-256 of the file, lower-case hex.</param>
public sealed record ImageFacts(
    string File,
    int Width,
    int Height,
    double? RowSpacingMm,
    double? ColumnSpacingMm,
    string SpacingSource,
    string Sha256);
