namespace ElbowAssist.Phantom.Exposure.Annotations;

/// <summary>How a sign came onto the film.</summary>
public enum AnnotationKind
{
    /// <summary>A lead marker, exposed with the film.</summary>
    Lead,

    /// <summary>Burned in after processing.</summary>
    BurnedIn,

    /// <summary>Burned in on a filled box.</summary>
    Boxed,
}

/// <summary>A sign on the film: text of <see cref="StrokeFont"/>, an arrow (<c>&gt;</c>), a ring (<c>°</c>) or a ruler (<c>|</c> repeated).</summary>
/// <param name="Text">Characters of the stroke font.</param>
/// <param name="Kind">Lead or burned in.</param>
/// <param name="X">Centre, to the right of the image centre, as a share of the longer image side.</param>
/// <param name="Y">Centre, below the image centre, as a share of the longer image side.</param>
/// <param name="Height">Height of a capital as a share of the longer image side.</param>
/// <param name="TurnDegrees">Turn, degrees from x towards y.</param>
/// <param name="Mirrored">Seen from behind.</param>
/// <param name="StrokeWidth">Width of a stroke as a share of the height, 0.05 to 0.25.</param>
/// <param name="Grey">Grey from 0 to 1 of what is burned in; lead ignores it.</param>
public sealed record Annotation(
    string Text,
    AnnotationKind Kind,
    double X,
    double Y,
    double Height,
    double TurnDegrees,
    bool Mirrored,
    double StrokeWidth,
    double Grey);
