using ElbowAssist.Geometry;

namespace ElbowAssist.Pipeline.Calibration;

/// <summary>The symmetric square root of a 2×2 covariance: it turns with the covariance, so whitened errors keep their directions.</summary>
public readonly record struct SquareRoot(double XX, double XY, double YY)
{
    /// <summary>The root; of a singular covariance it is singular too.</summary>
    public static SquareRoot Of(Covariance c)
    {
        var determinant = Math.Sqrt(Math.Max(0, (c.XX * c.YY) - (c.XY * c.XY)));
        var t = Math.Sqrt(c.XX + c.YY + (2 * determinant));
        return t > 0 ? new SquareRoot((c.XX + determinant) / t, c.XY / t, (c.YY + determinant) / t) : default;
    }

    /// <summary>A column of the root.</summary>
    public Vector Column(int number) => number == 0 ? new Vector(XX, XY) : new Vector(XY, YY);

    /// <summary>A vector divided by the root; null if the root is singular.</summary>
    public Vector? Whiten(Vector v)
    {
        var determinant = (XX * YY) - (XY * XY);
        return determinant > 1e-12
            ? new Vector(((YY * v.X) - (XY * v.Y)) / determinant, ((XX * v.Y) - (XY * v.X)) / determinant)
            : null;
    }
}
