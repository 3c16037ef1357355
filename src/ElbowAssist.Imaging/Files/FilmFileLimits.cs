using ElbowAssist.Geometry;

namespace ElbowAssist.Imaging.Files;

/// <summary>Sizes beyond which a file is not decoded. All are held against the header, before any pixel is decoded.</summary>
public sealed record FilmFileLimits
{
    /// <summary>The limits used unless told otherwise; <c>ElbowAssist.Geometry/InputLimits.cs</c> says why they are what they are.</summary>
    public static FilmFileLimits Default { get; } = new();

    /// <summary>Most bytes of a file; default 256 MiB.</summary>
    public long FileBytes { get; init; } = InputLimits.FilmBytes;

    /// <summary>Most pixels, width times height; default 64 million.</summary>
    public long Pixels { get; init; } = InputLimits.FilmPixels;

    /// <summary>Most bytes of the decoded picture with all its channels; default 256 MiB.</summary>
    public long DecodedBytes { get; init; } = InputLimits.DecodedBytes;
}
