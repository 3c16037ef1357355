namespace ElbowAssist.Geometry.Spread;

/// <summary>Values computed from points; writes NaN for a value that these points do not define.</summary>
/// <param name="points">The points.</param>
/// <param name="values">Receives one number per value.</param>
public delegate void PointFunction(ReadOnlySpan<Point> points, Span<double> values);
