using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Fits;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>
/// A line through cortex points, or through the midpoints of paired cortex points, of one film: which of them are on the
/// film, their spread, and the fit from which redraws start.
/// </summary>
internal sealed class FittedAxis
{
    private const int MostPoints = 8;

    /// <summary>Last step of a redrawn line's direction in radians: a thousandth of the spreads met here.</summary>
    private const double RedrawTolerance = 1e-6;

    private readonly int[] first;
    private readonly int[] second;
    private readonly Covariance[] spread;
    private readonly LineFitOptions options;
    private readonly Line start;

    private FittedAxis(int[] first, int[] second, Covariance[] spread, LineFitOptions options, Line start)
    {
        this.first = first;
        this.second = second;
        this.spread = spread;
        this.options = options;
        this.start = start;
    }

    /// <summary>A line with NaN everywhere: what a construction gets where there is none.</summary>
    public static Line None { get; } = new(new Point(double.NaN, double.NaN), new Vector(double.NaN, double.NaN));

    /// <summary>A line through the points of a family that are on the film.</summary>
    /// <param name="laid">The film's landmarks.</param>
    /// <param name="names">Landmark names, proximal to distal.</param>
    /// <param name="bow">Departure of the edge from a straight line, as a share of the stretch fitted.</param>
    public static FittedAxis Through(LaidLandmarks laid, IEnumerable<string> names, double bow) =>
        Create(laid, [.. names.Select(laid.Set.IndexOf).Where(i => laid.Points[i].IsFinite)], [], bow);

    /// <summary>A line through the midpoints of those pairs of which both are on the film.</summary>
    /// <param name="laid">The film's landmarks.</param>
    /// <param name="pairs">Landmark names of both cortices, proximal to distal.</param>
    /// <param name="bow">Departure of the axis from a straight line, as a share of the stretch fitted.</param>
    public static FittedAxis Between(LaidLandmarks laid, IEnumerable<(string A, string B)> pairs, double bow)
    {
        var both = pairs.Select(p => (A: laid.Set.IndexOf(p.A), B: laid.Set.IndexOf(p.B)))
            .Where(p => laid.Points[p.A].IsFinite && laid.Points[p.B].IsFinite).ToList();
        return Create(laid, [.. both.Select(p => p.A)], [.. both.Select(p => p.B)], bow);
    }

    /// <summary>The line through these points, running from the first level toward the last; NaN if undefined.</summary>
    public Line Lay(ReadOnlySpan<Point> points)
    {
        Span<Point> on = stackalloc Point[MostPoints];
        on = on[..first.Length];
        for (var i = 0; i < first.Length; i++)
        {
            on[i] = second.Length == 0 ? points[first[i]] : Point.Midpoint(points[first[i]], points[second[i]]);
        }

        if (on.Length == 2)
        {
            return on[0].DistanceTo(on[1]) > 0 ? new Line(Point.Midpoint(on[0], on[1]), (on[1] - on[0]).Unit) : None;
        }

        var exit = double.IsNaN(start.Point.X)
            ? LineFit.Orthogonal(on, out var line)
            : LineFit.Near(start, on, spread, options, out line);
        return exit.HasEstimate() ? line : None;
    }

    private static FittedAxis Create(LaidLandmarks laid, int[] first, int[] second, double bow)
    {
        if (first.Length < 2)
        {
            return new FittedAxis(first, second, [], LineFitOptions.Default, None);
        }

        var plain = new FittedAxis(first, second, [], LineFitOptions.Default, None);
        var line = plain.Lay(laid.Points);
        if (laid.Spread is null || double.IsNaN(line.Point.X))
        {
            return plain;
        }

        var stretch = laid.Points[first[0]].DistanceTo(laid.Points[first[^1]]);
        var fitting = LineFitOptions.Default with { ModelError = bow * stretch };
        Covariance[] covariances = second.Length == 0
            ? [.. first.Select(laid.Spread.Of)]
            : [.. first.Zip(second, laid.Spread.OfMidpoint)];
        var fitted = new FittedAxis(first, second, covariances, fitting, line).Lay(laid.Points);
        return new FittedAxis(first, second, covariances, fitting with { Tolerance = RedrawTolerance }, fitted);
    }
}
