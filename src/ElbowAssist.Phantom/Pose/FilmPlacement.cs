using ElbowAssist.Geometry;

namespace ElbowAssist.Phantom.Pose;

/// <summary>Where the elbow comes to lie on the film.</summary>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="PlaneToFilm">From the plane of the joint (millimetres right and down of the joint centre) to pixels.</param>
public sealed record FilmPlacement(int Width, int Height, Similarity PlaneToFilm)
{
    /// <summary>Size of a pixel in the plane of the joint.</summary>
    public double PixelMillimetres => 1 / PlaneToFilm.Scale;
}
