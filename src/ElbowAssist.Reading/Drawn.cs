using ElbowAssist.Geometry;

namespace ElbowAssist.Reading;

/// <summary>A line in pixels of the original image, named after the measurement it serves.</summary>
public sealed record NamedLine(string Name, Point Point, Vector Direction);

/// <summary>A circle in pixels of the original image; <c>capitellum</c> or <c>trochlea</c>.</summary>
public sealed record NamedCircle(string Name, Point Centre, double Radius);
