namespace ElbowAssist.Geometry.Fits;

/// <summary>How a line is fitted.</summary>
/// <param name="HuberThreshold">
/// Standardised residual from which a point counts linearly instead of by its square; 1.345 keeps 95 % efficiency under
/// normal errors (Huber PJ, Robust Statistics, Wiley 1981).
/// </param>
/// <param name="ModelError">
/// Standard deviation, in the unit of the points, by which the true edge departs from a straight line (bow, flare). It
/// is added to every point's variance, so that well-laid points on a bowed edge do not outvote one another.
/// </param>
/// <param name="Tolerance">Last step of the direction, radians.</param>
public readonly record struct LineFitOptions(double HuberThreshold, double ModelError, double Tolerance)
{
    /// <summary>Threshold 1.345, no model error, last step 1e-11.</summary>
    public static LineFitOptions Default => new(1.345, 0, 1e-11);
}
