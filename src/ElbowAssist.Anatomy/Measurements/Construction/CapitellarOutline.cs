using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>
/// The capitellum on a lateral film: its fitted circle, and the reach of its outline along any direction. Where at least
/// eight rim points are on the film the reach is that of the outline itself: its outermost rim point, refined by the
/// parabola through that point and its two neighbours; next to a gap in the outline, and with fewer points, the circle's.
/// </summary>
internal sealed class CapitellarOutline
{
    private const int RimPoints = 12;
    private const int FewestForOutline = 8;

    private readonly int[] rim;
    private readonly bool[] seen;
    private readonly bool outlined;
    private readonly FittedCircle circle;

    public CapitellarOutline(LaidLandmarks laid)
    {
        rim = [.. Enumerable.Range(1, RimPoints).Select(n => laid.Set.IndexOf(LandmarkNames.CapitellumRim(n)))];
        seen = new bool[RimPoints];
        for (var i = 0; i < RimPoints; i++)
        {
            seen[i] = laid.Points[rim[i]].IsFinite;
        }

        outlined = seen.Count(s => s) >= FewestForOutline;
        circle = FittedCircle.Through(laid, Enumerable.Range(1, RimPoints).Select(LandmarkNames.CapitellumRim));
    }

    /// <summary>The fitted circle.</summary>
    public Circle Circle(ReadOnlySpan<Point> points) => circle.Lay(points);

    /// <summary>Smallest and largest coordinate of the outline along a unit direction, counted from an origin.</summary>
    public (double Low, double High) Reach(ReadOnlySpan<Point> points, in Circle fitted, Point origin, Vector direction)
    {
        var centre = direction.Dot(fitted.Centre - origin);
        if (!outlined)
        {
            return (centre - fitted.Radius, centre + fitted.Radius);
        }

        Span<double> along = stackalloc double[RimPoints];
        for (var i = 0; i < RimPoints; i++)
        {
            along[i] = seen[i] ? direction.Dot(points[rim[i]] - origin) : double.NaN;
        }

        var high = Outermost(along, centre + fitted.Radius);
        for (var i = 0; i < RimPoints; i++)
        {
            along[i] = -along[i];
        }

        return (-Outermost(along, fitted.Radius - centre), high);
    }

    private static double Outermost(ReadOnlySpan<double> along, double ofCircle)
    {
        var best = -1;
        for (var i = 0; i < along.Length; i++)
        {
            if (!double.IsNaN(along[i]) && (best < 0 || along[i] > along[best]))
            {
                best = i;
            }
        }

        var before = along[(best + along.Length - 1) % along.Length];
        var after = along[(best + 1) % along.Length];
        if (double.IsNaN(before) || double.IsNaN(after))
        {
            return ofCircle;
        }

        var curvature = before - (2 * along[best]) + after;
        return curvature < 0 ? along[best] - ((after - before) * (after - before) / (8 * curvature)) : along[best];
    }
}
