using CsCheck;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Decoding;

namespace ElbowAssist.Models.Tests;

public sealed class HeatmapDecoderTests
{
    [Fact]
    public void OneCell_IsAtItsCentre()
    {
        var map = new float[8 * 6];
        Array.Fill(map, -50);
        map[(2 * 8) + 5] = 50;
        var peak = HeatmapDecoder.Decode(map, 8, 6, stride: 4);
        Assert.Equal(new Point(22, 10), peak.Position);
        Assert.Equal(1, peak.Share, 1e-6);
    }

    [Fact]
    public void TwoEqualNeighbours_AreHalfway()
    {
        var map = new float[8 * 8];
        Array.Fill(map, -50);
        map[(3 * 8) + 3] = 1;
        map[(3 * 8) + 4] = 1;
        var peak = HeatmapDecoder.Decode(map, 8, 8, stride: 2);
        Assert.Equal(8, peak.Position.X, 1e-5);
        Assert.Equal(7, peak.Position.Y, 1e-5);
        // Two cells half a cell either side of the mean: variance a quarter of a cell, four square pixels each.
        Assert.Equal(1, peak.Spread.XX, 1e-5);
        Assert.Equal(0, peak.Spread.YY, 1e-5);
    }

    [Fact]
    public void GaussianAnywhere_IsFoundToASmallFractionOfACell() => Gen.Select(Gen.Double[12, 115], Gen.Double[12, 115]).Sample((x, y) =>
    {
        var peak = HeatmapDecoder.Decode(Gaussian(64, (x, y, 0)), 64, 64, 2);
        Assert.InRange(peak.Position.DistanceTo(new Point(x, y)), 0, 0.05);
    }, iter: 200);

    [Fact]
    public void TwoPeaks_AreBothGivenWithTheirShares()
    {
        // The second logit is ln 3 lower, so it holds a quarter of the map.
        var peak = HeatmapDecoder.Decode(Gaussian(64, (30, 40, 0), (90, 80, -Math.Log(3))), 64, 64, 2);
        Assert.InRange(peak.Position.DistanceTo(new Point(30, 40)), 0, 0.05);
        Assert.InRange(peak.Second.DistanceTo(new Point(90, 80)), 0, 0.05);
        Assert.Equal(0.75, peak.Share, 0.01);
        Assert.Equal(0.25, peak.SecondShare, 0.01);
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    public void NotFinite_GivesNoPlace(float value)
    {
        var map = new float[64];
        map[5] = value;
        var peak = HeatmapDecoder.Decode(map, 8, 8, 2);
        Assert.False(peak.Position.IsFinite);
        Assert.Equal(0, peak.Share);
    }

    [Fact]
    public void AnyMap_GivesSharesThatAddUpToAtMostOne() => Gen.Float[-30, 30].Array[12 * 12].Sample(map =>
    {
        var peak = HeatmapDecoder.Decode(map, 12, 12, 2);
        Assert.InRange(peak.Share + peak.SecondShare, 0, 1.0001);
        Assert.InRange(peak.Position.X, 0, 24);
        Assert.InRange(peak.Position.Y, 0, 24);
    }, iter: 300);

    private static float[] Gaussian(int cells, params (double X, double Y, double Height)[] peaks)
    {
        var map = new float[cells * cells];
        for (var i = 0; i < map.Length; i++)
        {
            var (x, y) = (((i % cells) + 0.5) * 2, ((i / cells) + 0.5) * 2);
            var sum = peaks.Sum(p => Math.Exp(p.Height - ((Math.Pow(x - p.X, 2) + Math.Pow(y - p.Y, 2)) / (2 * 2.0 * 2.0))));
            map[i] = (float)Math.Log(sum + 1e-30);
        }

        return map;
    }
}
