namespace ElbowAssist.Imaging;

/// <summary>What is known of the pixels of a radiograph.</summary>
public sealed record RadiographFacts
{
    /// <summary>File name without its folder.</summary>
    public required string FileName { get; init; }

    /// <summary>SHA-256 of the file, lower-case hex.</summary>
    public required string Sha256 { get; init; }

    /// <summary>File format.</summary>
    public required FilmFormat Format { get; init; }

    /// <summary>Bits of a stored sample, 8 or 16 for files.</summary>
    public required int BitDepth { get; init; }

    /// <summary>
    /// Share from 0 to 1 of the pixels whose red, green and blue differ by more than 6 % of the range. A radiograph
    /// has none, or a little where a coloured mark was burned in; a photograph has many.
    /// </summary>
    public double ColouredShare { get; init; }

    /// <summary>EXIF or TIFF orientation that was applied, 1 to 8; 1 = the pixels are as stored.</summary>
    public int AppliedOrientation { get; init; } = 1;

    /// <summary>Distance between rows in millimetres in the patient plane, or null if unknown.</summary>
    public double? RowSpacingMm { get; init; }

    /// <summary>Distance between columns in millimetres in the patient plane, or null if unknown.</summary>
    public double? ColumnSpacingMm { get; init; }

    /// <summary>Where the spacing comes from, e.g. <c>option</c>, <c>sidecar</c>; <c>none</c> without spacing.</summary>
    public string SpacingSource { get; init; } = "none";

    /// <summary>
    /// True if the file says that bone is dark, false if it says that bone is bright, null if it says nothing and the
    /// picture must tell.
    /// </summary>
    public bool? BoneIsDark { get; init; }
}
