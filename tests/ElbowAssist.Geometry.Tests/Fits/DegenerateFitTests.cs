using CsCheck;
using ElbowAssist.Geometry.Fits;

namespace ElbowAssist.Geometry.Tests.Fits;

/// <summary>Points that define no line or circle give a reason, never an exception or a NaN.</summary>
public sealed class DegenerateFitTests
{
    private static readonly Point Missing = new(double.NaN, double.NaN);

    [Fact]
    public void Lines()
    {
        Assert.Equal(FitExit.TooFewPoints, Line([]).Exit);
        Assert.Equal(FitExit.TooFewPoints, Line([new(1, 1)]).Exit);
        Assert.Equal(FitExit.Coincident, Line([new(3, 4), new(3, 4), new(3, 4)]).Exit);
        Assert.Equal(FitExit.NotFinite, Line([new(0, 0), Missing, new(2, 2)]).Exit);
        Assert.Equal(FitExit.NoDirection, Line([new(1, 0), new(0, 1), new(-1, 0), new(0, -1)]).Exit);
        Assert.Equal(FitExit.Exact, Line([new(0, 0), new(2, 2)]).Exit);
        Assert.Equal(
            FitExit.NotFinite,
            LineFit.Fit([new(0, 0), new(1, 1)], [Covariance.Zero, new Covariance(-1, 0, 1)], LineFitOptions.Default).Exit);
    }

    [Fact]
    public void Circles()
    {
        Assert.Equal(FitExit.TooFewPoints, CircleFit.Fit([new(0, 0), new(1, 1)], []).Exit);
        Assert.Equal(FitExit.Coincident, CircleFit.Fit([new(3, 4), new(3, 4), new(3, 4)], []).Exit);
        Assert.Equal(FitExit.Collinear, CircleFit.Fit([new(0, 0), new(1, 1), new(2, 2), new(5, 5)], []).Exit);
        Assert.Equal(FitExit.NotFinite, CircleFit.Fit([new(0, 0), Missing, new(2, 1)], []).Exit);
        Assert.Equal(FitExit.ArcTooShort, CircleFit.Fit([OnUnit(0), OnUnit(15), OnUnit(30), OnUnit(45)], []).Exit);
        Assert.Equal(FitExit.Exact, CircleFit.Fit([OnUnit(0), OnUnit(60), OnUnit(120)], []).Exit);
    }

    [Fact]
    public void WrongNumberOfCovariances_IsABug()
    {
        Assert.Throws<ArgumentException>(() => LineFit.Fit([new(0, 0), new(1, 1)], [Covariance.Zero], LineFitOptions.Default));
        Assert.Throws<ArgumentException>(() => CircleFit.Fit([new(0, 0), new(1, 1), new(0, 2)], [Covariance.Zero]));
    }

    [Fact]
    public void AnyPointsWhatever_GiveAnEstimateOrAReason() =>
        Gen.Select(Coordinate, Coordinate, (x, y) => new Point(x, y)).Array[0, 12].Sample(
            points =>
            {
                var line = Line(points);
                Assert.Equal(line.Exit.HasEstimate(), line.Line != default);
                Assert.True(double.IsFinite(line.Line.Point.X + line.Line.Direction.X + line.AngleVariance + line.OffsetVariance));
                var circle = CircleFit.Fit(points, []);
                Assert.Equal(circle.Exit.HasEstimate(), circle.Circle.Radius > 0);
                Assert.True(double.IsFinite(circle.Circle.Centre.X + circle.Circle.Radius + circle.RadiusVariance + circle.Centre.XX));
                var spread = points.Select(p => Covariance.Isotropic(double.IsFinite(p.X) ? Math.Min(10, Math.Abs(p.X)) : 1)).ToArray();
                var weighted = LineFit.Fit(points, spread, LineFitOptions.Default);
                Assert.True(double.IsFinite(weighted.Line.Point.X + weighted.Line.Direction.X + weighted.AngleVariance));
            },
            iter: 10_000);

    // Few distinct values, so that coincident and collinear points are common; now and then something that is no number.
    private static Gen<double> Coordinate { get; } = Gen.OneOf(
        Gen.Int[0, 3].Select(i => (double)i), Gen.Double[-1000, 1000], Gen.Int[0, 20].Select(i => i == 0 ? double.NaN : i));

    private static LineEstimate Line(Point[] points) => LineFit.Fit(points, [], LineFitOptions.Default);

    private static Point OnUnit(double degrees) =>
        new(Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));
}
