namespace ElbowAssist.Anatomy;

/// <summary>Side of the body; known from metadata, an option or the reader, never from the image.</summary>
public enum Side
{
    /// <summary>Not stated.</summary>
    Unknown,

    /// <summary>Left elbow.</summary>
    Left,

    /// <summary>Right elbow.</summary>
    Right,
}
