using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Phantom.Truth;

/// <summary>The exact place of a landmark on a simulated film.</summary>
/// <param name="Name">Name from the landmark set of the view.</param>
/// <param name="Kind">Point or contour.</param>
/// <param name="Position">Pixels, (0,0) the top-left corner of the top-left pixel; null if not visible.</param>
/// <param name="Tangent">Unit tangent of the outline at a contour landmark; null for points and hidden landmarks.</param>
public sealed record TruthLandmark(string Name, LandmarkKind Kind, Point? Position, Vector? Tangent)
{
    /// <summary>True if the landmark is on the film, formed, and not hidden.</summary>
    public bool Visible => Position is not null;
}
