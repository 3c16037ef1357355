using System.Globalization;

namespace ElbowAssist.Geometry;

/// <summary>A displacement in the plane, in the unit of the points it connects.</summary>
/// <param name="X">Component to the right.</param>
/// <param name="Y">Component downwards.</param>
public readonly record struct Vector(double X, double Y)
{
    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>This vector turned by a quarter so that x goes to y: (−Y, X). On a film (y down) that is clockwise to the eye.</summary>
    public Vector Perpendicular => new(-Y, X);

    /// <summary>The vector of length 1 in the same direction; NaN components if the length is 0.</summary>
    public Vector Unit => this / Length;

    /// <summary>Scalar product.</summary>
    public double Dot(Vector other) => (X * other.X) + (Y * other.Y);

    /// <summary>The z component of the cross product, X·other.Y − Y·other.X.</summary>
    public double Cross(Vector other) => (X * other.Y) - (Y * other.X);

    /// <summary>Sum by components.</summary>
    public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference by components.</summary>
    public static Vector operator -(Vector a, Vector b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The opposite vector.</summary>
    public static Vector operator -(Vector a) => new(-a.X, -a.Y);

    /// <summary>Scaling.</summary>
    public static Vector operator *(Vector a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>Scaling.</summary>
    public static Vector operator *(double factor, Vector a) => a * factor;

    /// <summary>Both components, culture-invariant.</summary>
    /// <remarks>The text a record writes by itself would contain every derived vector, and theirs, without end.</remarks>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X}, {Y})");

    /// <summary>Scaling by the inverse.</summary>
    public static Vector operator /(Vector a, double divisor) => new(a.X / divisor, a.Y / divisor);
}
