using ElbowAssist.Geometry;

namespace ElbowAssist.Phantom.Pose;

/// <summary>Where the elbow comes to lie on the film.</summary>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="PixelMillimetres">Size of a pixel in the plane of the joint.</param>
/// <param name="TurnDegrees">Turn of the elbow in the plane, clockwise to the eye.</param>
/// <param name="Mirror">True to mirror the film left to right (before the turn).</param>
/// <param name="Joint">Pixel that the joint centre projects to.</param>
public sealed record FilmPlacement(
    int Width,
    int Height,
    double PixelMillimetres,
    double TurnDegrees,
    bool Mirror,
    Point Joint);
