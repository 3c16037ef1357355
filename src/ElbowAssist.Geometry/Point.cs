namespace ElbowAssist.Geometry;

/// <summary>
/// A point in the plane, x right and y down. The unit is the caller's: pixels of the original image
/// ((0,0) the top-left corner of the top-left pixel) or millimetres after scaling by the pixel spacing.
/// </summary>
/// <param name="X">Distance to the right of the origin.</param>
/// <param name="Y">Distance below the origin.</param>
public readonly record struct Point(double X, double Y)
{
    /// <summary>True if both coordinates are finite.</summary>
    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y);

    /// <summary>Euclidean distance to another point.</summary>
    public double DistanceTo(Point other) => (other - this).Length;

    /// <summary>The point halfway between two points.</summary>
    public static Point Midpoint(Point a, Point b) => new((a.X + b.X) / 2, (a.Y + b.Y) / 2);

    /// <summary>The vector from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Vector operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The point moved by a vector.</summary>
    public static Point operator +(Point a, Vector v) => new(a.X + v.X, a.Y + v.Y);

    /// <summary>The point moved by the opposite of a vector.</summary>
    public static Point operator -(Point a, Vector v) => new(a.X - v.X, a.Y - v.Y);
}
