namespace ElbowAssist.Anatomy.Landmarks;

/// <summary>What kind of place a landmark is.</summary>
public enum LandmarkKind
{
    /// <summary>The projection of a named three-dimensional point.</summary>
    Point,

    /// <summary>Where the outer edge of a bone meets a fixed anatomical level; only the error across the edge counts.</summary>
    Contour,
}
