namespace ElbowAssist.Geometry.Fits;

/// <summary>A fitted circle with its spread.</summary>
/// <param name="Circle">The circle; the default value where there is no estimate.</param>
/// <param name="Centre">Covariance of the centre, squared unit of the points.</param>
/// <param name="RadiusVariance">Variance of the radius.</param>
/// <param name="RadiusX">Covariance of radius and centre x.</param>
/// <param name="RadiusY">Covariance of radius and centre y.</param>
/// <param name="Exit">Why the fit ended.</param>
public readonly record struct CircleEstimate(
    Circle Circle,
    Covariance Centre,
    double RadiusVariance,
    double RadiusX,
    double RadiusY,
    FitExit Exit)
{
    /// <summary>A fit without estimate.</summary>
    public static CircleEstimate None(FitExit exit) => new(default, default, 0, 0, 0, exit);
}
