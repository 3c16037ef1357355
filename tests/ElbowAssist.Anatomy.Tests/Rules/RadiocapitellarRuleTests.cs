using ElbowAssist.Anatomy.Rules;
using static ElbowAssist.Anatomy.Tests.Rules.Case;

namespace ElbowAssist.Anatomy.Tests.Rules;

public sealed class RadiocapitellarRuleTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    [InlineData(30)]
    public void AMissOnTheLateral_CountsAtAnyAgeAndListsCauses(double years)
    {
        var prompt = Lateral(Girl(years), Value(RadiocapitellarRule.LateralNeck, 0.7)).Of("radiocapitellar-line.miss")!;
        Assert.Equal(Urgency.Strong, prompt.Urgency);
        foreach (var cause in new[] { "supracondylar", "lateral condyle", "dislocation of the elbow", "radial head", "ulnar", "old or congenital" })
        {
            Assert.Contains(cause, prompt.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AMissOnTheLateral_WeighsTheSameInEitherDirection() =>
        Assert.Equal(
            Lateral(Boy(6), Value(RadiocapitellarRule.LateralNeck, 0.7)),
            Lateral(Boy(6), Value(RadiocapitellarRule.LateralNeck, -0.7)));

    [Fact]
    public void UnderThree_AMissBringsThePhysisFirst()
    {
        var prompts = Lateral(Boy(2), Value(RadiocapitellarRule.LateralNeck, 0.7));
        Assert.Equal("under-three.physeal-separation", prompts[0].Code);
        Assert.Contains("safeguarding by local policy", prompts[0].Text, StringComparison.Ordinal);
        Assert.Null(Lateral(Boy(3), Value(RadiocapitellarRule.LateralNeck, 0.7)).Of("under-three.physeal-separation"));
    }

    [Fact]
    public void ShaftMissWithNeckCrossing_IsSoft()
    {
        var prompts = Lateral(Boy(6), Value(RadiocapitellarRule.LateralNeck, 0.1), Value(RadiocapitellarRule.LateralShaft, 0.6));
        Assert.Equal(Urgency.Soft, prompts.Of("radiocapitellar-line.shaft-only")!.Urgency);
        Assert.Null(prompts.Of("radiocapitellar-line.miss"));
    }

    [Fact]
    public void ShaftMissWithoutANeckLine_StillCounts()
    {
        var prompts = Lateral(Boy(6), RuleMeasurement.Withheld(RadiocapitellarRule.LateralNeck), Value(RadiocapitellarRule.LateralShaft, 0.6));
        Assert.NotNull(prompts.Of("radiocapitellar-line.miss"));
    }

    [Fact]
    public void ApMiss_IsInformation() =>
        Assert.Equal(Urgency.Information, Ap(Girl(4), Value(RadiocapitellarRule.ApNeck, 0.6)).Of("radiocapitellar-line.ap-miss")!.Urgency);

    [Fact]
    public void ApOffCentre_IsSilent() => Assert.Empty(Ap(Girl(14), Value(RadiocapitellarRule.ApNeck, 0.4)));

    [Theory]
    [InlineData(Sex.Female, 9.9, LineWeight.Little)]
    [InlineData(Sex.Female, 10, LineWeight.SecondLook)]
    [InlineData(Sex.Male, 10.9, LineWeight.Little)]
    [InlineData(Sex.Male, 11, LineWeight.SecondLook)]
    public void OffCentreInside_CountsFromAgeBySex(Sex sex, double years, LineWeight expected) =>
        Assert.Equal(expected, RadiocapitellarRule.Weigh(View.Lateral, 0.4, new((int)Math.Round(years * 12), sex)));

    [Fact]
    public void OffCentreInside_WithoutAge_CountsLittle() =>
        Assert.Equal(LineWeight.Little, RadiocapitellarRule.Weigh(View.Lateral, 0.4, Patient.Unknown));
}
