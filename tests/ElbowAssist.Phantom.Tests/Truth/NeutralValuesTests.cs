using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom.Tests.Truth;

/// <summary>Values free of projection belong to the elbow, not to how it was filmed.</summary>
public sealed class NeutralValuesTests
{
    [Theory]
    [InlineData(2UL)]
    [InlineData(7UL)]
    public void ValuesOfTheStraightElbow_AreTheSameHoweverItWasFilmed(ulong seed)
    {
        var elbow = Simulation.Sample(seed, new SimulationOptions { FromAgeYears = 3, ToAgeYears = 9, InjuredShare = 0 });
        var good = NeutralValues.Of(elbow, View.Ap, Adequacy.Good);
        var poor = NeutralValues.Of(elbow, View.Ap, Adequacy.Poor);
        Assert.Contains("baumann-angle", good.Keys);
        Assert.Contains("carrying-angle", good.Keys);
        Assert.Equal(good, poor);
    }

    [Fact]
    public void ShaftCondylarAngle_DependsOnTheHumerusAlone()
    {
        var elbow = Simulation.Sample(4, new SimulationOptions { FromAgeYears = 25, ToAgeYears = 60, InjuredShare = 0 });
        var good = NeutralValues.Of(elbow, View.Lateral, Adequacy.Good);
        var poor = NeutralValues.Of(elbow, View.Lateral, Adequacy.Poor);
        Assert.Equal(good["shaft-condylar-angle"], poor["shaft-condylar-angle"], 0.01);
        Assert.Equal(elbow.Shape.Humerus.CondylarTiltDegrees, good["shaft-condylar-angle"], 5.0);
    }

    [Fact]
    public void ObliqueView_HasNone() =>
        Assert.Empty(NeutralValues.Of(Simulation.Sample(1, new SimulationOptions()), View.Oblique, Adequacy.Good));
}
