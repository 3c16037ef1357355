using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Pose;

namespace ElbowAssist.Phantom.Tests.Truth;

public sealed class WornJointTests
{
    [Fact]
    public void SpurAtTheCoronoid_CarriesItsTip()
    {
        var options = new SimulationOptions { FromAgeYears = 20, ToAgeYears = 30, InjuredShare = 0, Adequacy = Adequacy.Good };
        var plain = Simulation.Sample(9, options);
        var worn = plain with { Shape = plain.Shape with { Ulna = plain.Shape.Ulna with { CoronoidSpur = 5 } } };
        Assert.InRange(Tip(worn).DistanceTo(Tip(plain)), 0.5, 8);

        Point Tip(ElbowCase elbow)
        {
            var truth = FilmSetup.OfCrop(elbow, View.Lateral, 256, options).Truth();
            var tip = truth.Landmarks.Single(l => l.Name == LandmarkNames.UlnaCoronoid).Position!.Value;
            return new Point(tip.X * truth.ObjectPixelMillimetres, tip.Y * truth.ObjectPixelMillimetres);
        }
    }

    [Fact]
    public void WearComesWithAge()
    {
        static double Share(double from, double to) => Enumerable.Range(0, 200).Count(seed =>
            Simulation.Sample((ulong)seed, new SimulationOptions { FromAgeYears = from, ToAgeYears = to }).Shape.Humerus.Wear > 0) / 200.0;
        Assert.Equal(0, Share(1, 34));
        Assert.True(Share(60, 90) > Share(35, 55) + 0.1);
    }
}
