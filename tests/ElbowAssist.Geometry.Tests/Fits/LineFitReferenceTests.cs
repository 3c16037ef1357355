using ElbowAssist.Geometry.Fits;

namespace ElbowAssist.Geometry.Tests.Fits;

/// <summary>Line fits against published data and against SciPy 1.10.1 (odr and optimize.least_squares).</summary>
public sealed class LineFitReferenceTests
{
    private static readonly LineFitOptions NoHuber = LineFitOptions.Default with { HuberThreshold = 1e12 };

    // Pearson's data (Phil Mag 1901;2:559–72) with York's weights (Can J Phys 1966;44:1079–86).
    private static readonly double[] X = [0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
    private static readonly double[] Y = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
    private static readonly double[] WeightX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1.0];
    private static readonly double[] WeightY = [1.0, 1.8, 4.0, 8.0, 20, 20, 70, 70, 100, 500];

    private static readonly Point[] Points = [.. X.Zip(Y, (x, y) => new Point(x, y))];

    private static readonly Point[] Bent = [new(1.0, 0.2), new(1.4, 5.1), new(0.7, 10.3), new(3.9, 14.8), new(1.2, 20.4)];
    private static readonly Covariance[] BentSpread =
    [
        new(0.04, 0.01, 0.09), new(0.02, -0.01, 0.05), new(0.06, 0.02, 0.03), new(0.05, 0, 0.05), new(0.03, 0.01, 0.08),
    ];

    [Fact]
    public void PearsonYork_SlopeInterceptAndTheirDeviations()
    {
        Covariance[] spread = [.. WeightX.Zip(WeightY, (x, y) => new Covariance(1 / x, 0, 1 / y))];
        var fit = LineFit.Fit(Points, spread, NoHuber);
        Assert.Equal(FitExit.Converged, fit.Exit);
        var (slope, intercept) = SlopeAndIntercept(fit.Line);

        // York D et al, Am J Phys 2004;72:367–75, table II: 5.47991 and −0.480533; further digits from SciPy odr.
        Assert.Equal(-0.4805333651755581, slope, 1e-7);
        Assert.Equal(5.479910019767009, intercept, 1e-6);

        // Same table: deviation of the slope 0.057985; d(slope) = d(angle)·(1 + slope²).
        Assert.Equal(0.057985, Math.Sqrt(fit.AngleVariance) * (1 + (slope * slope)), 0.002);
    }

    [Fact]
    public void Pearson_EqualWeights_IsTotalLeastSquares()
    {
        var (slope, intercept) = SlopeAndIntercept(LineFit.Fit(Points, [], LineFitOptions.Default).Line);
        Assert.Equal(-0.5455612019835103, slope, 1e-7); // SciPy odr; Pearson printed y = 5.784 − 0.546 x
        Assert.Equal(5.784043796319201, intercept, 1e-7);
    }

    [Fact]
    public void FullCovariances_WithoutHuber_LineAndCovariance()
    {
        var fit = LineFit.Fit(Bent, BentSpread, NoHuber with { ModelError = 0.1 });
        AssertLine(fit.Line, 1.532902419259606, -1.1897520630291418, 1e-7);

        // inv(JᵀJ) of least_squares at the minimum, offset taken at the origin.
        var along = fit.Line.Direction.Dot(new Point(0, 0) - fit.Line.Point);
        Assert.Equal(0.00016823, fit.AngleVariance, 2e-8);
        Assert.Equal(0.02613214, fit.VarianceAt(along), 2e-6);
    }

    [Fact]
    public void FullCovariances_Huber_OutvotesTheStrayPoint() =>
        AssertLine(
            LineFit.Fit(Bent, BentSpread, LineFitOptions.Default with { ModelError = 0.1 }).Line,
            1.564227120360677, // least_squares(loss='huber', f_scale=1.345)
            -1.18114454342668,
            1e-7);

    private static (double Slope, double Intercept) SlopeAndIntercept(Line line)
    {
        var slope = line.Direction.Y / line.Direction.X;
        return (slope, line.Point.Y - (slope * line.Point.X));
    }

    private static void AssertLine(Line line, double angle, double offset, double tolerance)
    {
        Assert.Equal(angle, Math.Atan2(line.Direction.Y, line.Direction.X), tolerance);
        Assert.Equal(offset, line.Direction.Perpendicular.Dot(line.Point - new Point(0, 0)), tolerance * 10);
    }
}
