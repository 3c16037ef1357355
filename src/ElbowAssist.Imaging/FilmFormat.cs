namespace ElbowAssist.Imaging;

/// <summary>Where the pixels of a radiograph come from.</summary>
public enum FilmFormat
{
    /// <summary>Handed over as pixels by a caller, not decoded here.</summary>
    Pixels,

    /// <summary>Portable Network Graphics.</summary>
    Png,

    /// <summary>JPEG, 8 bit.</summary>
    Jpeg,

    /// <summary>TIFF, first page.</summary>
    Tiff,
}
