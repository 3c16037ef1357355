namespace ElbowAssist.Geometry;

/// <summary>The symmetric 2×2 covariance matrix of a point, in squared units of its coordinates.</summary>
/// <param name="XX">Variance of x.</param>
/// <param name="XY">Covariance of x and y.</param>
/// <param name="YY">Variance of y.</param>
public readonly record struct Covariance(double XX, double XY, double YY)
{
    /// <summary>No spread at all.</summary>
    public static Covariance Zero => default;

    /// <summary>The covariance of independent errors of equal size in every direction.</summary>
    /// <param name="standardDeviation">Standard deviation along any direction.</param>
    public static Covariance Isotropic(double standardDeviation) =>
        new(standardDeviation * standardDeviation, 0, standardDeviation * standardDeviation);

    /// <summary>True if finite, with no negative variance in any direction.</summary>
    public bool IsValid =>
        double.IsFinite(XX) && double.IsFinite(XY) && double.IsFinite(YY) && XX >= 0 && YY >= 0 &&
        (XX * YY) - (XY * XY) >= -1e-12 * Math.Max(1, XX * YY);

    /// <summary>Variance along a direction, nᵀΣn for the unit vector n of <paramref name="direction"/>.</summary>
    public double Along(Vector direction)
    {
        var n = direction.Unit;
        return (XX * n.X * n.X) + (2 * XY * n.X * n.Y) + (YY * n.Y * n.Y);
    }

    /// <summary>The covariance after scaling x and y by separate factors.</summary>
    public Covariance Scaled(double scaleX, double scaleY) =>
        new(XX * scaleX * scaleX, XY * scaleX * scaleY, YY * scaleY * scaleY);

    /// <summary>Sum of two covariances (independent errors added).</summary>
    public static Covariance operator +(Covariance a, Covariance b) => new(a.XX + b.XX, a.XY + b.XY, a.YY + b.YY);

    /// <summary>Scaling of the variances by a factor.</summary>
    public static Covariance operator *(Covariance a, double factor) => new(a.XX * factor, a.XY * factor, a.YY * factor);
}
