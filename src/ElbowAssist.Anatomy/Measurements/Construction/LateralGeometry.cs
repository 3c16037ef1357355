using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>
/// The constructions of a lateral film laid once, in scaled coordinates; NaN where a construction is undefined. Humeral
/// lines run distally, radial and ulnar ones away from the elbow.
/// </summary>
internal readonly ref struct LateralGeometry(ReadOnlySpan<Point> points, LateralFits fits)
{
    private readonly ReadOnlySpan<Point> points = points;
    private readonly LateralFits fits = fits;

    /// <summary>Shaft axis through the midpoints at levels 1 to 5.</summary>
    public Line Shaft { get; init; }

    /// <summary>Line along the anterior cortex at levels 3 to 5.</summary>
    public Line AnteriorDistal { get; init; }

    /// <summary>Line along the anterior cortex at levels 1 to 3.</summary>
    public Line AnteriorShaft { get; init; }

    /// <summary>Radial axis through the midpoints of the neck.</summary>
    public Line Neck { get; init; }

    /// <summary>Radial axis through the midpoints of the shaft.</summary>
    public Line RadialShaft { get; init; }

    /// <summary>Line along the posterior border of the ulna.</summary>
    public Line Ulna { get; init; }

    /// <summary>Fitted capitellar circle.</summary>
    public Circle Capitellum { get; init; }

    /// <summary>Fitted circle of the medial trochlear lip.</summary>
    public Circle Trochlea { get; init; }

    /// <summary>Vector toward the anterior side of the humerus.</summary>
    public Vector Anterior { get; init; }

    /// <summary>Vector toward the flexor side of the radius.</summary>
    public Vector Flexor { get; init; }

    /// <summary>A landmark.</summary>
    public Point this[int index] => points[index];

    /// <summary>Reach of the capitellar outline along a unit direction, counted from an origin.</summary>
    public (double Low, double High) Reach(Point origin, Vector direction) =>
        fits.Outline.Reach(points, Capitellum, origin, direction);
}
