namespace ElbowAssist.Drawing;

/// <summary>What an overlay shows besides lines, circles and the caution.</summary>
public sealed record OverlayOptions
{
    /// <summary>Everything.</summary>
    public static OverlayOptions Default { get; } = new();

    /// <summary>The film under the overlay, or null to leave the ground open.</summary>
    public GreyPicture? Film { get; init; }

    /// <summary>Whether the landmarks' ellipses are drawn.</summary>
    public bool Landmarks { get; init; } = true;

    /// <summary>Whether the measurements are written out beside the film.</summary>
    public bool Legend { get; init; } = true;

    /// <summary>Whether large letters name the lines in place of words: for pictures a few centimetres wide, with a key beside them.</summary>
    internal bool Letters { get; init; }
}
