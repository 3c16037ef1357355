using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.Exposure.Sampling;

/// <summary>What the sampler looks at when it places a field and signs.</summary>
/// <param name="Paths">Projection.</param>
/// <param name="View">View, for the text on the film.</param>
/// <param name="Side">Side, for the marker.</param>
/// <param name="Points">Places in pixels that a well-placed field holds.</param>
/// <param name="Focus">Place in pixels that the field is centred on.</param>
/// <param name="UnitPixels">The anatomical unit W in pixels.</param>
/// <param name="PixelMm">Size of a pixel in the object plane, millimetres.</param>
public sealed record FilmContent(
    PathImage Paths, View View, Side Side, IReadOnlyList<Point> Points, Point Focus, double UnitPixels, double PixelMm);
