using ElbowAssist.Geometry;

namespace ElbowAssist.Reading;

/// <summary>A line in pixels of the original image, named after the measurement it serves.</summary>
/// <param name="Name">Name of the measurement.</param>
/// <param name="Point">A point on the line.</param>
/// <param name="Direction">Direction of the line, of length 1.</param>
public sealed record NamedLine(string Name, Point Point, Vector Direction)
{
    /// <summary>How far the line would move if laid again on this film, or null if not known.</summary>
    public LineSpread? Spread { get; init; }
}

/// <summary>A circle in pixels of the original image; <c>capitellum</c> or <c>trochlea</c>.</summary>
public sealed record NamedCircle(string Name, Point Centre, double Radius);

/// <summary>
/// The joint spread of a line's place and direction, in pixels of the original image and radians. The offset is counted
/// along <see cref="Vector.Perpendicular"/> of the direction at the line's point; the angle from direction to perpendicular.
/// </summary>
/// <param name="OffsetVariance">Variance of the offset at the line's point, px².</param>
/// <param name="Covariance">Covariance of offset and angle, px·rad.</param>
/// <param name="AngleVariance">Variance of the angle, rad².</param>
public readonly record struct LineSpread(double OffsetVariance, double Covariance, double AngleVariance)
{
    /// <summary>Standard deviation of the offset, in pixels, at a signed distance along the line from its point.</summary>
    /// <param name="along">Distance from the line's point, in pixels, positive in its direction.</param>
    public double StandardDeviationAt(double along) =>
        Math.Sqrt(Math.Max(0, OffsetVariance + (2 * along * Covariance) + (along * along * AngleVariance)));
}
