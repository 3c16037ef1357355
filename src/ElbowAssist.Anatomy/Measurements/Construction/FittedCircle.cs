using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Fits;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>A circle through the outline points of one film, ready to be laid again and again.</summary>
internal sealed class FittedCircle
{
    private const int MostPoints = 12;
    private const double Tolerance = 1e-8;

    private readonly int[] indices;
    private readonly double[] weights;
    private readonly Circle start;

    private FittedCircle(int[] indices, double[] weights, Circle start)
    {
        this.indices = indices;
        this.weights = weights;
        this.start = start;
    }

    /// <summary>A circle with NaN everywhere.</summary>
    public static Circle None { get; } = new(new Point(double.NaN, double.NaN), double.NaN);

    /// <summary>A circle through those of the named points that are on the film.</summary>
    public static FittedCircle Through(LaidLandmarks laid, IEnumerable<string> names)
    {
        int[] on = [.. names.Select(laid.Set.IndexOf).Where(i => laid.Points[i].IsFinite)];
        Point[] points = new Point[on.Length];
        for (var i = 0; i < on.Length; i++)
        {
            points[i] = laid.Points[on[i]];
        }

        Covariance[] spread = laid.Spread is null ? [] : [.. on.Select(laid.Spread.Of)];
        if (!spread.Any(s => s.XX + s.YY > 0))
        {
            spread = [];
        }

        var estimate = CircleFit.Fit(points, spread);
        if (!estimate.Exit.HasEstimate())
        {
            return new FittedCircle(on, [], None);
        }

        var inverse = new double[spread.Length];
        CircleFit.Weights(estimate.Circle, points, spread, inverse);
        var fitted = new FittedCircle(on, inverse, estimate.Circle);
        return new FittedCircle(on, inverse, fitted.Lay(laid.Points));
    }

    /// <summary>The circle through these points; NaN if undefined.</summary>
    public Circle Lay(ReadOnlySpan<Point> points)
    {
        if (double.IsNaN(start.Radius))
        {
            return None;
        }

        Span<Point> on = stackalloc Point[MostPoints];
        on = on[..indices.Length];
        for (var i = 0; i < indices.Length; i++)
        {
            on[i] = points[indices[i]];
        }

        return CircleFit.Near(start, on, weights, Tolerance, out var circle).HasEstimate() ? circle : None;
    }
}
