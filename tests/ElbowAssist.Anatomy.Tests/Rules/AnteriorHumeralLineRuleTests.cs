using ElbowAssist.Anatomy.Rules;
using static ElbowAssist.Anatomy.Tests.Rules.Case;

namespace ElbowAssist.Anatomy.Tests.Rules;

public sealed class AnteriorHumeralLineRuleTests
{
    private const string Position = AnteriorHumeralLineRule.Position;

    [Theory]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(4.5)]
    [InlineData(8)]
    [InlineData(40)]
    public void CapitellumBehindTheLine_IsAStrongPromptAtAnyAge(double years)
    {
        var prompt = Lateral(Girl(years), Value(Position, -0.2)).Of("anterior-humeral-line.capitellum-behind-line");
        Assert.Equal(Urgency.Strong, prompt!.Urgency);
        Assert.Contains("before blaming the view", prompt.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void CapitellumBehindTheLine_NeedsNoAge() =>
        Assert.NotNull(Lateral(Patient.Unknown, Value(Position, -0.2)).Of("anterior-humeral-line.capitellum-behind-line"));

    [Fact]
    public void AWithheldLine_RaisesNothing() =>
        Assert.DoesNotContain(Lateral(Girl(8), RuleMeasurement.Withheld(Position)), p => p.Code.StartsWith("anterior", StringComparison.Ordinal));

    [Fact]
    public void TheSameNumberOnAnAp_RaisesNothing() =>
        Assert.DoesNotContain(Ap(Girl(8), Value(Position, -0.2)), p => p.Code.StartsWith("anterior", StringComparison.Ordinal));

    [Theory]
    [InlineData(1.9, null)]
    [InlineData(2.5, null)]
    [InlineData(3.9, null)]
    [InlineData(4.5, "anterior-humeral-line.transition")]
    [InlineData(5, "anterior-humeral-line.anterior-third")]
    [InlineData(8, "anterior-humeral-line.anterior-third")]
    public void AnteriorThird_IsPromptedByAge(double years, string? code)
    {
        var lines = Lateral(Boy(years), Value(Position, 0.25)).Where(p => p.Code.StartsWith("anterior", StringComparison.Ordinal)).ToList();
        Assert.Equal(code, lines.SingleOrDefault()?.Code);
    }

    [Fact]
    public void AnteriorThird_IsOnlyASoftPrompt() =>
        Assert.Equal(Urgency.Soft, Lateral(Boy(8), Value(Position, 0.25)).Of("anterior-humeral-line.anterior-third")!.Urgency);

    [Fact]
    public void AnteriorThird_WithoutAge_AppliesNoAgeRule()
    {
        var prompts = Lateral(Patient.Unknown, Value(Position, 0.25));
        Assert.Equal(["context.age-unknown"], prompts.Select(p => p.Code));
    }

    [Fact]
    public void ALineThatMayMiss_SaysSo()
    {
        var prompts = Lateral(Boy(8), Value(Position, 0.05, half: 0.1, eitherSide: true));
        Assert.NotNull(prompts.Of("anterior-humeral-line.near-miss"));
    }

    [Fact]
    public void Zones_MeetAtTheThirds()
    {
        Assert.Equal(AnteriorLineZone.AnteriorThird, AnteriorHumeralLineRule.ZoneOf(0));
        Assert.Equal(AnteriorLineZone.MiddleThird, AnteriorHumeralLineRule.ZoneOf(1.0 / 3));
        Assert.Equal(AnteriorLineZone.PosteriorThird, AnteriorHumeralLineRule.ZoneOf(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => AnteriorHumeralLineRule.ZoneOf(double.NaN));
    }
}
