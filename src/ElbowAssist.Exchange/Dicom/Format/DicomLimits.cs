using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>What a hostile file may ask for at most. A file beyond a limit is turned away with a sentence naming it.</summary>
public sealed record DicomLimits
{
    /// <summary>The limits used unless others are given.</summary>
    public static DicomLimits Default { get; } = new();

    /// <summary>Largest file, and largest content of a deflated file, in bytes. Default 256 MiB.</summary>
    public int MaxBytes { get; init; } = InputLimits.FilmBytes;

    /// <summary>Largest film in pixels (rows times columns). Default 64 million.</summary>
    public int MaxPixels { get; init; } = InputLimits.FilmPixels;

    /// <summary>Deepest nesting of sequences. Default 24.</summary>
    public int MaxDepth { get; init; } = InputLimits.DicomDepth;

    /// <summary>Most elements, items and fragments in a file, all nesting levels together. Default 200 000.</summary>
    public int MaxElements { get; init; } = InputLimits.DicomElements;
}
