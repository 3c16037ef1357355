using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>
/// The constructions of an AP film laid once, in scaled coordinates; NaN where a construction is undefined. The humeral
/// axis runs distally, radial and ulnar ones away from the elbow.
/// </summary>
internal readonly ref struct ApGeometry(ReadOnlySpan<Point> points)
{
    private readonly ReadOnlySpan<Point> points = points;

    /// <summary>Humeral shaft axis through the midpoints at levels 1 to 4.</summary>
    public Line Shaft { get; init; }

    /// <summary>Radial axis through the midpoints of the neck.</summary>
    public Line Neck { get; init; }

    /// <summary>Radial axis through the midpoints of the shaft.</summary>
    public Line RadialShaft { get; init; }

    /// <summary>Ulnar axis through the midpoints at levels 1 to 3.</summary>
    public Line Ulna { get; init; }

    /// <summary>Vector toward the lateral side of the humerus.</summary>
    public Vector Lateral { get; init; }

    /// <summary>Vector toward the lateral side of the radius.</summary>
    public Vector RadialLateral { get; init; }

    /// <summary>A landmark.</summary>
    public Point this[int index] => points[index];
}
