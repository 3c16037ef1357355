namespace ElbowAssist.Geometry.Fits;

/// <summary>A fitted line with its spread.</summary>
/// <param name="Line">
/// The line, through the foot of the points' mean, with a unit direction running from the first point toward the last.
/// </param>
/// <param name="OffsetVariance">Variance of the line's position across itself at <c>Line.Point</c>, squared unit of the points.</param>
/// <param name="AngleVariance">Variance of the line's direction, squared radians.</param>
/// <param name="OffsetAngleCovariance">Covariance of the two, unit of the points times radians.</param>
/// <param name="Exit">Why the fit ended; where it has no estimate the line is the default value and all variances are 0.</param>
public readonly record struct LineEstimate(
    Line Line,
    double OffsetVariance,
    double AngleVariance,
    double OffsetAngleCovariance,
    FitExit Exit)
{
    /// <summary>A fit without estimate.</summary>
    public static LineEstimate None(FitExit exit) => new(default, 0, 0, 0, exit);

    /// <summary>
    /// Variance of the line's position across itself at a distance <paramref name="along"/> (unit of the points) from
    /// <c>Line.Point</c> in its direction: the half-width squared of the band around the line.
    /// </summary>
    public double VarianceAt(double along) =>
        Math.Max(0, OffsetVariance + (2 * along * OffsetAngleCovariance) + (along * along * AngleVariance));
}
