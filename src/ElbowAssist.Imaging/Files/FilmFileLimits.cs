namespace ElbowAssist.Imaging.Files;

/// <summary>Sizes beyond which a file is not decoded. All are held against the header, before any pixel is decoded.</summary>
public sealed record FilmFileLimits
{
    /// <summary>
    /// The limits used unless told otherwise: a 35 × 43 cm detector at 0.1 mm has 15 megapixels, so 64 leave room for
    /// scanned film (common practice, no source).
    /// </summary>
    public static FilmFileLimits Default { get; } = new();

    /// <summary>Most bytes of a file; default 256 MiB.</summary>
    public long FileBytes { get; init; } = 256L << 20;

    /// <summary>Most pixels, width times height; default 64 million.</summary>
    public long Pixels { get; init; } = 64_000_000;

    /// <summary>Most bytes of the decoded picture with all its channels; default 256 MiB.</summary>
    public long DecodedBytes { get; init; } = 256L << 20;
}
