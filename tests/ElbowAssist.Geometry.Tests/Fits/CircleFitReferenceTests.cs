using ElbowAssist.Geometry.Fits;

namespace ElbowAssist.Geometry.Tests.Fits;

/// <summary>Circle fits against a published example and against SciPy 1.10.1 (optimize.least_squares).</summary>
public sealed class CircleFitReferenceTests
{
    private static readonly Point[] Arc =
    [
        new(349.797, 691.707), new(381.627, 702.631), new(414.704, 693.858), new(434.865, 669.823), new(445.123, 642.452), new(436.103, 607.15),
    ];

    [Fact]
    public void PublishedSixPoints_GeometricFit()
    {
        // Gander W, Golub GH, Strebel R. Least-squares fitting of circles and ellipses. BIT 1994;34:558–78:
        // centre (4.7398, 2.9835), radius 4.7142; further digits from SciPy.
        Point[] points = [new(1, 7), new(2, 6), new(5, 8), new(7, 7), new(9, 5), new(3, 7)];
        var fit = CircleFit.Fit(points, []);
        Assert.Equal(FitExit.Converged, fit.Exit);
        Assert.Equal(4.739782409665036, fit.Circle.Centre.X, 1e-6);
        Assert.Equal(2.9835326920039726, fit.Circle.Centre.Y, 1e-6);
        Assert.Equal(4.714226043423353, fit.Circle.Radius, 1e-6);

        // s²·inv(JᵀJ)
        Assert.Equal(0.22809514, fit.Centre.XX, 1e-6);
        Assert.Equal(0.28860854, fit.Centre.XY, 1e-6);
        Assert.Equal(2.38058021, fit.Centre.YY, 1e-5);
        Assert.Equal(1.4989573, fit.RadiusVariance, 1e-5);
        Assert.Equal(-1.84522176, fit.RadiusY, 1e-5);
    }

    [Fact]
    public void AnArc_EqualWeights()
    {
        var circle = CircleFit.Fit(Arc, []).Circle;
        Assert.Equal(382.4416951934782, circle.Centre.X, 1e-6);
        Assert.Equal(639.4578033272738, circle.Centre.Y, 1e-6);
        Assert.Equal(62.33443444374769, circle.Radius, 1e-6);
    }

    [Fact]
    public void AnArc_UnequalSpread_CircleAndCovariance()
    {
        double[] deviations = [0.5, 1, 2, 1, 0.5, 3];
        var fit = CircleFit.Fit(Arc, [.. deviations.Select(Covariance.Isotropic)]);
        Assert.Equal(382.76932665639663, fit.Circle.Centre.X, 1e-6);
        Assert.Equal(639.2023864028398, fit.Circle.Centre.Y, 1e-6);
        Assert.Equal(62.18991007823093, fit.Circle.Radius, 1e-6);
        Assert.Equal(0.8737062971588425, fit.Centre.XX, 1e-5);
        Assert.Equal(1.3537073149487604, fit.Centre.XY, 1e-5);
        Assert.Equal(2.692413435280318, fit.Centre.YY, 1e-5);
        Assert.Equal(1.2497417727490028, fit.RadiusVariance, 1e-5);
        Assert.Equal(-0.9346446607832942, fit.RadiusX, 1e-5);
    }
}
