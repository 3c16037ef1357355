using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>The ellipse in which a landmark would fall in 95 of 100 layings; never filled, so that bone shows through.</summary>
internal static class LandmarkMarks
{
    // The 95 % point of the chi-squared distribution with two degrees of freedom, −2 ln 0.05.
    private const double ChiSquared95 = 5.991;

    public static MarkGroup Of(Landmark landmark, Point position, FilmScale scale)
    {
        var unit = scale.Unit;
        var smallest = 3 * unit;
        var (major, minor, degrees) = landmark.Covariance is { } covariance ? Axes(covariance) : (0, 0, 0);
        var reader = landmark.Source == LandmarkSource.Reader;
        var ring = new Ring(
            position,
            Math.Max(major, smallest),
            Math.Max(minor, smallest),
            degrees,
            reader ? Ink.Reader : Ink.Tool,
            unit,
            []);
        return new MarkGroup("landmark", landmark.Name, null, [ring]);
    }

    private static (double Major, double Minor, double Degrees) Axes(Covariance c)
    {
        var mean = (c.XX + c.YY) / 2;
        var half = Math.Sqrt((((c.XX - c.YY) / 2) * ((c.XX - c.YY) / 2)) + (c.XY * c.XY));
        return (
            Math.Sqrt(ChiSquared95 * (mean + half)),
            Math.Sqrt(ChiSquared95 * Math.Max(0, mean - half)),
            0.5 * Math.Atan2(2 * c.XY, c.XX - c.YY) * 180 / Math.PI);
    }
}
