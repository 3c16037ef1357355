using ElbowAssist.Phantom.NearMiss;
using ElbowAssist.Phantom.NearMiss.Rendering;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class NearMissTests
{
    public static TheoryData<BodyRegion> Regions => [.. Enum.GetValues<BodyRegion>()];

    [Theory]
    [MemberData(nameof(Regions))]
    public void EveryRegion_ShowsBoneInSoftTissue(BodyRegion region)
    {
        var shows = 0;
        for (ulong seed = 0; seed < 3; seed++)
        {
            var (model, drawn, pixelMm) = NearMissSampler.Sample(seed, 40, region);
            var paths = NearMissRenderer.Render(model, 40, 40);
            Assert.Equal(region, drawn);
            Assert.True(pixelMm > 0);
            Assert.All(paths.Bone, v => Assert.InRange(v, 0, 200));
            Assert.All(paths.Soft, v => Assert.InRange(v, 0, 600));
            shows += paths.Bone.Any(v => v > 1) && paths.Soft.Any(v => v > 10) ? 1 : 0;
        }

        Assert.True(shows >= 2);
    }

    [Fact]
    public void SameSeed_SameScene()
    {
        var first = NearMissRenderer.Render(NearMissSampler.Sample(11, 32).Model, 32, 32);
        var second = NearMissRenderer.Render(NearMissSampler.Sample(11, 32).Model, 32, 32);
        Assert.Equal(first.Bone, second.Bone);
        Assert.Equal(first.Soft, second.Soft);
    }

    [Fact]
    public void Seeds_DrawEveryRegion()
    {
        var regions = Enumerable.Range(0, 600).Select(seed => NearMissSampler.Sample((ulong)seed, 8).Region).ToHashSet();
        Assert.Equal(Enum.GetValues<BodyRegion>().Length, regions.Count);
    }

    // A sphere of radius r has the chord 2r in its middle; its shell of compact bone is crossed twice.
    [Fact]
    public void MetalBall_HasItsDiameterAsPath()
    {
        var model = new NearMissModel(
            new NearMissScene
            {
                Camera = new() { Source = new(0, 0, 1e5f), Corner = new(-5, -5, 0), StepX = new(1, 0, 0), StepY = new(0, 1, 0), HalfDepth = 50 },
                SoftFirst = 1,
                SoftCount = 1,
                SoftJoin = 1,
                SolidCount = 1,
            },
            [new NearMissSolid { First = 0, Count = 1, Material = NearMissMaterial.Metal, Join = 1, BoundRadius = 9, HalfLength = 9, Axis = new(0, 1, 0) }],
            [SceneBuilder.Ball(default, 8), SceneBuilder.Ball(default, 20)]);
        var paths = NearMissRenderer.Render(model, 10, 10);
        var middle = (5 * 10) + 5;
        Assert.Equal(16, paths.Metal[middle], 0.3);
        Assert.Equal(24, paths.Soft[middle], 0.8);
    }
}
