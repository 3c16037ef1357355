using ElbowAssist.Anatomy;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Films;

/// <summary>A radiograph out of a DICOM file.</summary>
public sealed record DicomFilm
{
    /// <summary>Columns.</summary>
    public required int Width { get; init; }

    /// <summary>Rows.</summary>
    public required int Height { get; init; }

    /// <summary>Brightness as a display shows it, row by row, 0 to 65535; larger is brighter, whatever the file's polarity.</summary>
    public required ReadOnlyMemory<ushort> Pixels { get; init; }

    /// <summary>One flag per pixel that is padding or covered by a shutter (its brightness is 0); empty if there are none.</summary>
    public required ReadOnlyMemory<bool> Excluded { get; init; }

    /// <summary>Spacing and its provenance.</summary>
    public required DicomSpacing Spacing { get; init; }

    /// <summary>Age and sex as far as the file states them.</summary>
    public required Patient Patient { get; init; }

    /// <summary>Side as stated; unknown if absent, both, or contradictory.</summary>
    public required Side Side { get; init; }

    /// <summary>View as stated. A hint only: what the image shows decides.</summary>
    public required View ViewHint { get; init; }

    /// <summary>True if the pixels were compressed with loss at any time.</summary>
    public required bool LossyCompressed { get; init; }

    /// <summary>True unless the file states that no identifying text is burned in.</summary>
    public required bool MayShowIdentity { get; init; }

    /// <summary>Contradictions within the file, each with a stable code and a sentence without identifiers.</summary>
    public required IReadOnlyList<Reason> Conflicts { get; init; }

    /// <summary>The object this film came from, as reports and presentation states must name it.</summary>
    public required DicomSource Source { get; init; }
}

/// <summary>Spacing of a film.</summary>
/// <param name="RowMm">Distance between rows in millimetres, or null if the file gives none.</param>
/// <param name="ColumnMm">Distance between columns in millimetres, or null.</param>
/// <param name="RowOverColumn">Ratio of the two, known even without millimetres; 1 for square pixels.</param>
/// <param name="Source">Which attribute, which plane, and whether magnification was corrected.</param>
/// <param name="InPatientPlane">True if the millimetres hold in the plane of the patient.</param>
public sealed record DicomSpacing(double? RowMm, double? ColumnMm, double RowOverColumn, string Source, bool InPatientPlane);
