using CsCheck;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Tests.Landmarks;

public sealed class CanonicalPoseTests
{
    /// <summary>A lateral elbow flexed to a right angle, already upright: forearm to the left, olecranon to the right.</summary>
    private static readonly LocatorPoints Lateral = new(new(100, 20), new(100, 80), new(40, 80), new(120, 75));

    [Fact]
    public void UprightLateral_IsCentredAndScaledByHand()
    {
        // Centre (80, 60); the farthest point is the forearm or shaft, √(40² + 20²) = 44.7214 away; side 125.2198.
        var crop = CanonicalPose.FilmToCrop(Lateral)!.Value;
        Assert.Equal(256 / 125.21981, crop.Scale, 1e-5);
        Assert.False(crop.Mirrored);
        AssertClose(new Point(128, 128), crop.Apply(new Point(80, 60)));
        AssertClose(new Point(128 + (20 * crop.Scale), 128 - (40 * crop.Scale)), crop.Apply(Lateral.Shaft));
    }

    [Fact]
    public void KnownW_SetsTheSmallestSide() =>
        Assert.Equal(256.0 / 140, CanonicalPose.FilmToCrop(Lateral, unitW: 20)!.Value.Scale, 1e-9);

    [Fact]
    public void MirroredFilm_GivesTheSameCrop()
    {
        static Point Mirror(Point p) => new(300 - p.X, p.Y);
        var mirrored = new LocatorPoints(Mirror(Lateral.Shaft), Mirror(Lateral.Joint), Mirror(Lateral.Forearm), Mirror(Lateral.Mark));
        var crop = CanonicalPose.FilmToCrop(mirrored)!.Value;
        Assert.True(crop.Mirrored);
        AssertClose(CanonicalPose.FilmToCrop(Lateral)!.Value.Apply(Lateral.Forearm), crop.Apply(mirrored.Forearm));
    }

    [Fact]
    public void AnySimilarityOfTheFilm_GivesTheSameCrop() => Gen.Select(
        Gen.Double[-3, 3], Gen.Double[0.2, 3], Gen.Double[-500, 500], Gen.Bool).Sample((a, b, shift, mirror) =>
    {
        var moved = new Similarity(a, b, new Vector(shift, -2 * shift), mirror);
        var points = new LocatorPoints(
            moved.Apply(Lateral.Shaft), moved.Apply(Lateral.Joint), moved.Apply(Lateral.Forearm), moved.Apply(Lateral.Mark));
        var before = CanonicalPose.FilmToCrop(Lateral)!.Value;
        var after = CanonicalPose.FilmToCrop(points)!.Value;
        AssertClose(before.Apply(Lateral.Shaft), after.Apply(points.Shaft));
        AssertClose(before.Apply(Lateral.Mark), after.Apply(points.Mark));
    });

    [Fact]
    public void ShaftPointsUp_AndMarkIsRightOfTheForearm() => Gen.Double[0, 400].Array[8].Where(c => Math.Abs(c[0] - c[2]) > 1).Sample(c =>
    {
        var points = new LocatorPoints(new(c[0], c[1]), new(c[2], c[3]), new(c[4], c[5]), new(c[6], c[7]));
        var crop = CanonicalPose.FilmToCrop(points)!.Value;
        var (shaft, joint) = (crop.Apply(points.Shaft), crop.Apply(points.Joint));
        Assert.Equal(joint.X, shaft.X, 1e-6);
        Assert.True(shaft.Y < joint.Y);
        Assert.True(crop.Apply(points.Mark).X >= crop.Apply(points.Forearm).X - 1e-6);
    });

    [Theory]
    [InlineData(double.NaN, 0)]
    [InlineData(100, 80)]
    public void PointsThatGiveNoPose_GiveNull(double x, double y) =>
        Assert.Null(CanonicalPose.FilmToCrop(Lateral with { Shaft = new Point(x, y) }));

    private static void AssertClose(Point expected, Point actual) =>
        Assert.True(expected.DistanceTo(actual) < 1e-6, $"{expected} != {actual}");
}
