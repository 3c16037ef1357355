using System.Text.RegularExpressions;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Reading.Tests.Walks;

public sealed class WalkDefinitionTests
{
    public static TheoryData<WalkDefinition> Both => [WalkDefinition.AdultWalk, WalkDefinition.ChildWalk];

    [Theory]
    [MemberData(nameof(Both))]
    public void Steps_ComeInTheFixedOrder(WalkDefinition walk)
    {
        Assert.Equal(walk.Steps.Select(s => s.Topic).Order(), walk.Steps.Select(s => s.Topic));
        Assert.Equal(WalkTopic.History, walk.Steps[0].Topic);
        Assert.Equal(WalkTopic.Conclusion, walk.Steps[^1].Topic);
    }

    [Theory]
    [MemberData(nameof(Both))]
    public void Questions_HaveOneIdentifierEach(WalkDefinition walk)
    {
        var ids = walk.Steps.SelectMany(s => s.Items).Select(i => i.Id).ToList();
        Assert.Equal(ids.Distinct(), ids);
    }

    [Fact]
    public void GrowthCentres_AreAskedInTheChildAlone()
    {
        Assert.DoesNotContain(WalkDefinition.AdultWalk.Steps, s => s.Topic == WalkTopic.GrowthCentres);
        Assert.Equal(6, WalkDefinition.ChildWalk.Steps.Single(s => s.Topic == WalkTopic.GrowthCentres).Items.Count);
    }

    [Fact]
    public void AgeUnknown_HasNoWalkUntilAdultOrChildIsSaid()
    {
        Assert.Null(WalkDefinition.For(Maturity.Unknown));
        Assert.Same(WalkDefinition.ChildWalk, WalkDefinition.For(Maturity.Adolescent));
    }

    [Theory]
    [MemberData(nameof(Both))]
    public void EveryCortex_IsTracedIntactBrokenOrNot(WalkDefinition walk) =>
        Assert.All(walk.Steps.Single(s => s.Topic == WalkTopic.Cortex).Items, i =>
            Assert.Equal(["traced-intact", "traced-break", "cannot-trace"], i.Choices.Select(c => c.Code)));

    [Theory]
    [MemberData(nameof(Both))]
    public void EveryCortex_HasACropAtRealLandmarks(WalkDefinition walk)
    {
        foreach (var item in walk.Steps.Single(s => s.Topic == WalkTopic.Cortex).Items)
        {
            Assert.NotEmpty(item.Crops);
            foreach (var crop in item.Crops)
            {
                Assert.All(crop.Around, name => Assert.True(LandmarkSet.Of(crop.View)!.IndexOf(name) >= 0, name));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Both))]
    public void Wording_NeverReassures(WalkDefinition walk)
    {
        var words = walk.Steps.SelectMany(s => s.Items.SelectMany(i => i.Choices.Select(c => c.Label).Append(i.Question)).Append(s.Title));
        Assert.All(words, w => Assert.DoesNotMatch(
            new Regex(@"\b(normal|negative|clear|passed|excluded|reassuring|acceptable|reduced)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)), w));
    }
}
