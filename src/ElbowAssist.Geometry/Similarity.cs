namespace ElbowAssist.Geometry;

/// <summary>
/// A similarity of the plane: turn, scale and shift, and a reflection before them if <see cref="Mirrored"/>.
/// With points as complex numbers z = x + iy it is (A + iB)·z + shift, or (A + iB)·z̄ + shift when mirrored.
/// </summary>
/// <param name="A">Real part of the factor.</param>
/// <param name="B">Imaginary part of the factor.</param>
/// <param name="Shift">Image of the origin.</param>
/// <param name="Mirrored">Whether y changes sign before turning.</param>
public readonly record struct Similarity(double A, double B, Vector Shift, bool Mirrored)
{
    /// <summary>Every point to itself.</summary>
    public static Similarity Identity => new(1, 0, default, false);

    /// <summary>Lengths grow by this factor; areas by its square.</summary>
    public double Scale => Math.Sqrt((A * A) + (B * B));

    /// <summary>The similarity that goes back.</summary>
    public Similarity Inverse
    {
        get
        {
            var square = (A * A) + (B * B);
            var linear = Mirrored
                ? new Similarity(A / square, B / square, default, true)
                : new Similarity(A / square, -B / square, default, false);
            return linear with { Shift = -linear.Apply(Shift) };
        }
    }

    /// <summary>A turn about a centre, scaled; positive angles turn x towards y, clockwise to the eye on a film.</summary>
    public static Similarity About(Point centre, double radians, double scale, bool mirrored = false)
    {
        var linear = new Similarity(scale * Math.Cos(radians), scale * Math.Sin(radians), default, mirrored);
        return linear with { Shift = centre - linear.Apply(centre) };
    }

    /// <summary>Image of a point.</summary>
    public Point Apply(Point point)
    {
        var v = Apply(new Vector(point.X, point.Y));
        return new Point(v.X + Shift.X, v.Y + Shift.Y);
    }

    /// <summary>Image of a displacement; the shift plays no part.</summary>
    public Vector Apply(Vector vector)
    {
        var y = Mirrored ? -vector.Y : vector.Y;
        return new Vector((A * vector.X) - (B * y), (B * vector.X) + (A * y));
    }

    /// <summary>Covariance of the image of a point whose covariance is given, MΣMᵀ.</summary>
    public Covariance Apply(Covariance covariance)
    {
        var xy = Mirrored ? -covariance.XY : covariance.XY;
        var (xx, yy) = (covariance.XX, covariance.YY);
        return new Covariance(
            (A * A * xx) - (2 * A * B * xy) + (B * B * yy),
            (A * B * (xx - yy)) + (((A * A) - (B * B)) * xy),
            (B * B * xx) + (2 * A * B * xy) + (A * A * yy));
    }

    /// <summary>This similarity followed by another.</summary>
    public Similarity Then(Similarity next)
    {
        var b = next.Mirrored ? -B : B;
        var shift = next.Apply(Shift) + next.Shift;
        return new Similarity(
            (next.A * A) - (next.B * b), (next.A * b) + (next.B * A), shift, Mirrored != next.Mirrored);
    }
}
