using CsCheck;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Merging;

namespace ElbowAssist.Models.Tests;

public sealed class PassMergerTests
{
    private static readonly string[] OneName = ["humerus.fossa.roof"];

    [Fact]
    public void PassesWithoutCrop_AreMeanWithinPlusBetween()
    {
        // Places 10 and 12 on x: mean 11, variance between 1. Within (2 + 4) / 2 = 3.
        var merged = Merge(Placed(new(10, 5), new Covariance(2, 0, 1)), Placed(new(12, 5), new Covariance(4, 0, 1)));
        Assert.Equal(new Point(11, 5), merged.Position);
        Assert.Equal(new Covariance(4, 0, 1), merged.Spread);
        Assert.Equal(new Covariance(1, 0, 0), merged.Between);
        Assert.Null(merged.Disagreement);
    }

    [Fact]
    public void MorePassesThatAgree_DoNotNarrowTheSpread()
    {
        var pass = Placed(new(10, 5), new Covariance(2, 0.5, 1));
        Assert.Equal(Merge(pass).Spread, Merge(pass, pass, pass, pass).Spread);
    }

    [Fact]
    public void CovariancesAreTakenToTheFilm()
    {
        // A quarter turn and twice the size: x and y change places, variances grow fourfold.
        var crop = new Similarity(0, 2, default, false);
        var merged = Merge(Placed(new(10, 5), new Covariance(2, 0, 1), crop));
        Assert.Equal(4, merged.Spread!.Value.XX, 1e-9);
        Assert.Equal(8, merged.Spread!.Value.YY, 1e-9);
        Assert.Equal(0, merged.Position.DistanceTo(new Point(-10, 20)), 1e-9);
    }

    [Fact]
    public void SamePlaceSeenThroughAnyCrops_IsThatPlace() => Gen.Select(
        Gen.Double[-200, 200], Gen.Double[-200, 200],
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0.3, 3], Gen.Bool).Array[1, 6]).Sample((x, y, crops) =>
    {
        var place = new Point(x, y);
        var merged = Merge([.. crops.Select(c =>
        {
            var cropToFilm = Similarity.About(new Point(3, 4), c.Item1, c.Item2, c.Item3);
            return Placed(cropToFilm.Inverse.Apply(place), new Covariance(1, 0, 1), cropToFilm);
        })]);
        Assert.InRange(merged.Position.DistanceTo(place), 0, 1e-6);
        Assert.InRange(Math.Abs(merged.Between.XX) + Math.Abs(merged.Between.YY), 0, 1e-9);
        Assert.Null(merged.Disagreement);
    });

    [Fact]
    public void TwoGroupsOfPasses_AreNamedWithBothPlaces()
    {
        var (a, b) = (new Point(10, 10), new Point(40, 10));
        var spread = new Covariance(4, 0, 4);
        var merged = Merge(Placed(a, spread), Placed(a, spread), Placed(b, spread), Placed(a, spread));
        Assert.Equal(new TwoPlaces(a, b, 0.25), merged.Disagreement);
    }

    [Fact]
    public void SecondPeakInEveryHeatmap_IsNamed()
    {
        var pass = new PlacedPass(new LandmarkPass([new Proposal(new(10, 10), new Covariance(1, 0, 1), 1, 0.6, new Point(60, 10), 0.4)], null, []), Similarity.Identity, 256);
        var merged = Merge(pass, pass);
        Assert.Equal(0.4, merged.Disagreement!.SecondWeight, 1e-9);
        Assert.Equal(new Point(60, 10), merged.Disagreement.Second);
    }

    [Fact]
    public void WideSpread_IsNoDisagreement()
    {
        var spread = new Covariance(400, 0, 400);
        Assert.Null(Merge(Placed(new(10, 10), spread), Placed(new(50, 10), spread)).Disagreement);
    }

    [Fact]
    public void CropThatEndsBeforeThePlace_IsNoWitness()
    {
        // The second crop begins at film column 100, right of the place the first one sees.
        var seeing = Placed(new(40, 90), new Covariance(1, 0, 1));
        var cut = new PlacedPass(
            new LandmarkPass([new Proposal(new(0, 90), new Covariance(9, 0, 9), 0.02, 1, null, 0)], null, []),
            new Similarity(1, 0, new Vector(100, 0), false), 256);
        var merged = Merge(seeing, cut);
        Assert.Equal(1, merged.Visibility);
        Assert.Equal(new Point(40, 90), merged.Position);
        Assert.Equal([0], merged.Passes);
    }

    [Fact]
    public void CropThatShowsThePlaceAndSeesNothing_IsAWitness()
    {
        var blind = new PlacedPass(
            new LandmarkPass([new Proposal(new(41, 90), new Covariance(1, 0, 1), 0.2, 1, null, 0)], null, []), Similarity.Identity, 256);
        Assert.Equal(0.6, Merge(Placed(new(40, 90), new Covariance(1, 0, 1)), blind).Visibility, 1e-9);
    }

    [Fact]
    public void PassesWithoutAPlace_GiveNone()
    {
        var merged = Merge(Placed(new(double.NaN, double.NaN), null));
        Assert.False(merged.Position.IsFinite);
        Assert.Null(merged.Spread);
    }

    private static MergedProposal Merge(params PlacedPass[] passes) => PassMerger.Merge(OneName, passes)[0];

    private static PlacedPass Placed(Point at, Covariance? spread, Similarity? cropToFilm = null) => new(
        new LandmarkPass([new Proposal(at, spread, 1, 1, null, 0)], null, []), cropToFilm ?? Similarity.Identity, 256);
}
