namespace ElbowAssist.Geometry;

/// <summary>A straight line through a point. The direction need not have length 1 but must not be zero.</summary>
/// <param name="Point">A point on the line.</param>
/// <param name="Direction">The direction in which the line runs.</param>
public readonly record struct Line(Point Point, Vector Direction)
{
    /// <summary>The line through two points, running from the first to the second.</summary>
    public static Line Through(Point from, Point to) => new(from, to - from);

    /// <summary>
    /// Distance of a point from the line; positive on the side of <see cref="Vector.Perpendicular"/> of the direction.
    /// </summary>
    public double SignedDistanceTo(Point point) => Direction.Unit.Perpendicular.Dot(point - Point);

    /// <summary>The foot of the perpendicular from a point.</summary>
    public Point Project(Point point)
    {
        var u = Direction.Unit;
        return Point + (u * u.Dot(point - Point));
    }
}
