namespace ElbowAssist.Geometry.Fits;

/// <summary>Why a fit ended.</summary>
public enum FitExit
{
    /// <summary>The minimum was reached.</summary>
    Converged,

    /// <summary>As many points as unknowns: the curve runs through them and residuals say nothing of spread.</summary>
    Exact,

    /// <summary>Fewer points than the curve needs.</summary>
    TooFewPoints,

    /// <summary>A coordinate or a covariance is missing or not a number.</summary>
    NotFinite,

    /// <summary>All points lie in one place.</summary>
    Coincident,

    /// <summary>The points scatter equally in every direction: no line is better than another.</summary>
    NoDirection,

    /// <summary>The points lie on a straight line: no circle of finite size fits.</summary>
    Collinear,

    /// <summary>The points cover too short an arc to tell the radius.</summary>
    ArcTooShort,

    /// <summary>No minimum within the allowed iterations.</summary>
    NotConverged,
}

/// <summary>Reading of <see cref="FitExit"/>.</summary>
public static class FitExits
{
    /// <summary>True if the fit carries an estimate.</summary>
    public static bool HasEstimate(this FitExit exit) => exit is FitExit.Converged or FitExit.Exact;
}
