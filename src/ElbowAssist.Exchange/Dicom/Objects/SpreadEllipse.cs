using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Dicom.Objects;

/// <summary>The ellipse that holds 95 of 100 redraws of a point under a normal distribution, in pixels.</summary>
/// <param name="Centre">Centre.</param>
/// <param name="Major">Half of the long axis.</param>
/// <param name="Minor">Half of the short axis.</param>
internal readonly record struct SpreadEllipse(Point Centre, Vector Major, Vector Minor)
{
    /// <summary>0.95 quantile of chi-squared with two degrees of freedom, −2 ln 0.05.</summary>
    private static readonly double Quantile = -2 * Math.Log(0.05);

    public static SpreadEllipse Of(Point centre, Covariance spread)
    {
        var angle = 0.5 * Math.Atan2(2 * spread.XY, spread.XX - spread.YY);
        var along = new Vector(Math.Cos(angle), Math.Sin(angle));
        return new(
            centre,
            along * Math.Sqrt(Math.Max(0, Quantile * spread.Along(along))),
            along.Perpendicular * Math.Sqrt(Math.Max(0, Quantile * spread.Along(along.Perpendicular))));
    }

    /// <summary>Radius of the smallest circle around it.</summary>
    public double Radius => Major.Length;

    /// <summary>Ends of the long axis, then of the short axis, as DICOM wants an ELLIPSE.</summary>
    public IReadOnlyList<Point> Ends => [Centre - Major, Centre + Major, Centre - Minor, Centre + Minor];

    /// <summary>The covariance that ends of axes stand for, or null if they are no ellipse.</summary>
    public static Covariance? FromEnds(IReadOnlyList<Point> ends)
    {
        if (ends.Count != 4)
        {
            return null;
        }

        var (major, minor) = ((ends[1] - ends[0]) * 0.5, (ends[3] - ends[2]) * 0.5);
        return new Covariance(
            ((major.X * major.X) + (minor.X * minor.X)) / Quantile,
            ((major.X * major.Y) + (minor.X * minor.Y)) / Quantile,
            ((major.Y * major.Y) + (minor.Y * minor.Y)) / Quantile);
    }
}
