namespace ElbowAssist.Geometry;

/// <summary>Angles in degrees.</summary>
public static class Angles
{
    /// <summary>Degrees of a radian.</summary>
    public const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>
    /// Angle from one direction to another in degrees, over −180 and up to 180; positive in the sense that turns x to y
    /// (on a film, y down, clockwise to the eye).
    /// </summary>
    public static double Signed(Vector from, Vector to) => Math.Atan2(from.Cross(to), from.Dot(to)) * DegreesPerRadian;

    /// <summary>Angle between two directions in degrees, 0 to 180.</summary>
    public static double Between(Vector a, Vector b) => Math.Abs(Signed(a, b));

    /// <summary>Angle between two undirected lines in degrees, 0 to 90.</summary>
    public static double Acute(Vector a, Vector b)
    {
        var angle = Between(a, b);
        return angle > 90 ? 180 - angle : angle;
    }

    /// <summary>
    /// Variance, in squared degrees, of the angle between two lines fitted to separate points: the sum of the variances
    /// of their directions, less twice their covariance where the points err together.
    /// </summary>
    /// <param name="a">First line.</param>
    /// <param name="b">Second line.</param>
    /// <param name="covariance">Covariance of the two directions in squared radians, 0 if independent.</param>
    public static double VarianceBetween(in Fits.LineEstimate a, in Fits.LineEstimate b, double covariance = 0) =>
        Math.Max(0, a.AngleVariance + b.AngleVariance - (2 * covariance)) * DegreesPerRadian * DegreesPerRadian;
}
