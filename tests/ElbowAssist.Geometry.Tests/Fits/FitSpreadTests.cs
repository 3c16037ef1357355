using ElbowAssist.Geometry.Fits;
using ElbowAssist.Geometry.Spread;

namespace ElbowAssist.Geometry.Tests.Fits;

/// <summary>The covariance a fit states against the scatter of repeated fits.</summary>
public sealed class FitSpreadTests
{
    private const int Repeats = 20_000;

    [Fact]
    public void Line_StatedVarianceIsTheScatterOfRepeatedFits()
    {
        Point[] points = [new(0, 0), new(10, 1), new(20, 2), new(30, 3), new(40, 4)];
        Covariance[] spread = [new(0.2, 0.05, 0.1), new(0.1, 0, 0.3), new(0.4, -0.1, 0.2), new(0.1, 0, 0.1), new(0.2, 0.1, 0.3)];
        var options = LineFitOptions.Default with { HuberThreshold = 50 };
        var fit = LineFit.Fit(points, spread, options);
        var drawn = Redraws.Of(
            points,
            JointCovariance.Independent(spread),
            (p, values) =>
            {
                LineFit.Near(fit.Line, p, spread, options, out var line);
                values[0] = Math.Atan2(line.Direction.Y, line.Direction.X);
                values[1] = fit.Line.Direction.Perpendicular.Dot(line.Point - fit.Line.Point) -
                    (Math.Tan(values[0] - Math.Atan2(fit.Line.Direction.Y, fit.Line.Direction.X)) * fit.Line.Direction.Dot(line.Point - fit.Line.Point));
            },
            2,
            Repeats,
            seed: 7);
        Assert.Equal(1, Variance(drawn.Of(0)) / fit.AngleVariance, 0.05);
        Assert.Equal(1, Variance(drawn.Of(1)) / fit.OffsetVariance, 0.05);
        Assert.Equal(
            Angles.VarianceBetween(fit, fit), 2 * fit.AngleVariance * Angles.DegreesPerRadian * Angles.DegreesPerRadian, 1e-12);
    }

    [Fact]
    public void Circle_StatedVarianceIsTheScatterOfRepeatedFits()
    {
        Point[] points = [.. Enumerable.Range(0, 6).Select(i => Math.SinCos(i * Math.PI / 6)).Select(a => new Point(10 * a.Cos, 10 * a.Sin))];
        Covariance[] spread = [.. points.Select((_, i) => Covariance.Isotropic(0.05 + (0.02 * i)))];
        var fit = CircleFit.Fit(points, spread);
        var weights = new double[points.Length];
        CircleFit.Weights(fit.Circle, points, spread, weights);
        var drawn = Redraws.Of(
            points,
            JointCovariance.Independent(spread),
            (p, values) =>
            {
                CircleFit.Near(fit.Circle, p, weights, 1e-10, out var circle);
                (values[0], values[1], values[2]) = (circle.Centre.X, circle.Centre.Y, circle.Radius);
            },
            3,
            Repeats,
            seed: 8);
        Assert.Equal(1, Variance(drawn.Of(0)) / fit.Centre.XX, 0.05);
        Assert.Equal(1, Variance(drawn.Of(1)) / fit.Centre.YY, 0.05);
        Assert.Equal(1, Variance(drawn.Of(2)) / fit.RadiusVariance, 0.05);
    }

    private static double Variance(ReadOnlySpan<double> values)
    {
        double sum = 0, squares = 0;
        foreach (var value in values)
        {
            sum += value;
            squares += value * value;
        }

        var mean = sum / values.Length;
        return (squares / values.Length) - (mean * mean);
    }
}
