using CsCheck;

namespace ElbowAssist.Geometry.Tests;

public sealed class SimilarityTests
{
    private static readonly Gen<Similarity> Any = Gen.Select(
        Gen.Double[-3, 3], Gen.Double[0.1, 3], Gen.Double[-99, 99], Gen.Double[-99, 99], Gen.Bool,
        (a, b, x, y, m) => new Similarity(a, b, new Vector(x, y), m));

    private static readonly Gen<Point> AnyPoint = Gen.Select(Gen.Double[-99, 99], Gen.Double[-99, 99], (x, y) => new Point(x, y));

    [Fact]
    public void QuarterTurnAboutACentre_MovesRightToDown()
    {
        var turn = Similarity.About(new Point(10, 20), Math.PI / 2, 2);
        AssertClose(new Point(10, 26), turn.Apply(new Point(13, 20)));
        AssertClose(new Point(10, 20), turn.Apply(new Point(10, 20)));
    }

    [Fact]
    public void Mirrored_ChangesTheSignOfYFirst() =>
        AssertClose(new Point(7, -3), new Similarity(1, 0, new Vector(5, 0), true).Apply(new Point(2, 3)));

    [Fact]
    public void Inverse_GoesBack() =>
        Gen.Select(Any, AnyPoint).Sample((s, p) => AssertClose(p, s.Inverse.Apply(s.Apply(p))));

    [Fact]
    public void Then_IsApplyAfterApply() =>
        Gen.Select(Any, Any, AnyPoint).Sample((s, t, p) => AssertClose(t.Apply(s.Apply(p)), s.Then(t).Apply(p)));

    [Fact]
    public void Covariance_FollowsDirections() => Gen.Select(Any, Gen.Double[0, 3]).Sample((s, angle) =>
    {
        // The variance along the image of a direction is the old variance times the squared scale.
        var covariance = new Covariance(4, 1.5, 2);
        var direction = new Vector(Math.Cos(angle), Math.Sin(angle));
        var expected = covariance.Along(direction) * s.Scale * s.Scale;
        Assert.Equal(expected, s.Apply(covariance).Along(s.Apply(direction)), 1e-6);
    });

    private static void AssertClose(Point expected, Point actual) =>
        Assert.True(expected.DistanceTo(actual) < 1e-6, $"{expected} != {actual}");
}
