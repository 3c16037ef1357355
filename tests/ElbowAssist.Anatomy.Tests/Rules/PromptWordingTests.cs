using System.Collections.Immutable;
using System.Text.RegularExpressions;
using CsCheck;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;
using ElbowAssist.Anatomy.Rules.References;

namespace ElbowAssist.Anatomy.Tests.Rules;

/// <summary>Whatever is marked and measured, no prompt reassures, and every prompt names its source.</summary>
public sealed class PromptWordingTests
{
    private static readonly Regex Forbidden = new(
        @"\b(normal|negative|clear|passed|excluded|reassuring|acceptable|reduced)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

    private static readonly string[] Names =
    [
        AnteriorHumeralLineRule.Position, RadiocapitellarRule.LateralNeck, RadiocapitellarRule.LateralShaft, RadiocapitellarRule.ApNeck,
        RadiocapitellarRule.ApShaft, "radiocapitellar-ratio", "ulnohumeral-gap", "fat-pad.anterior.angle",
    ];

    private static readonly Gen<RuleMeasurement> Measurement =
        from index in Gen.Int[0, Names.Length - 1]
        let name = Names[index]
        from value in name is "ulnohumeral-gap" or "fat-pad.anterior.angle" ? Gen.Double[0, 25] : Gen.Double[-1.5, 1.5]
        from half in Gen.Double[0, 0.5]
        from either in Gen.Bool
        select new RuleMeasurement(name, value, value - half, value + half, either);

    private static readonly Gen<ReaderMarks> Marks =
        from trauma in Gen.Enum<Call>()
        from effusion in Gen.Enum<Call>()
        from injuries in Gen.Enum<SuspectedInjury>().HashSet[0, 4]
        from flags in Gen.Bool.Array[5]
        from centres in Gen.Enum<CentreMark>().Array[6]
        select new ReaderMarks
        {
            Trauma = trauma,
            Effusion = effusion,
            Injuries = [.. injuries],
            Displaced = flags[0],
            Dislocated = flags[1],
            ReductionDone = flags[2],
            Open = flags[3],
            Unwell = flags[4],
            GrowthCentres = centres.Select((m, i) => (Centre: (GrowthCentre)i, Mark: m)).ToImmutableSortedDictionary(p => p.Centre, p => p.Mark),
        };

    private static readonly Gen<RuleInput> Input =
        from age in Gen.Int[0, 1000]
        from ageKnown in Gen.Bool
        from sex in Gen.Int[0, 2]
        from view in Gen.Enum<View>()
        from context in Gen.Enum<FilmContext>()
        from stated in Gen.Enum<Maturity>()
        from measurements in Measurement.Array[0, 8]
        from marks in Marks
        select new RuleInput
        {
            Patient = new(ageKnown ? age : null, sex switch { 0 => null, 1 => Sex.Female, _ => Sex.Male }),
            View = view,
            Context = context,
            StatedMaturity = stated,
            Measurements = measurements,
            Marks = marks,
        };

    [Fact]
    public void Prompts_NeverReassureAndAlwaysNameASource() => Input.Sample(
        input =>
        {
            var prompts = ElbowRules.Evaluate(input);
            foreach (var prompt in prompts)
            {
                Assert.DoesNotMatch(Forbidden, prompt.Text);
                Assert.DoesNotMatch(Forbidden, prompt.Source);
                Assert.NotEmpty(prompt.Source);
                Assert.EndsWith(".", prompt.Text, StringComparison.Ordinal);
            }

            Assert.Equal(prompts.OrderBy(p => p.Urgency), prompts);
            Assert.Equal(prompts.DistinctBy(p => p.Code), prompts);
            Assert.True(ElbowRules.Visible(prompts, new HashSet<string>()).Count <= 3);
        },
        iter: 5000);

    [Fact]
    public void Prompts_NeverAskForTheOtherSide() => Input.Sample(
        input => Assert.All(ElbowRules.Evaluate(input), p =>
            Assert.DoesNotMatch(@"other side|other elbow|comparison view|contralateral", p.Text)),
        iter: 2000);

    [Fact]
    public void Prompts_NeverAdviseMovingALimb() => Input.Sample(
        input => Assert.All(ElbowRules.Evaluate(input), p => Assert.DoesNotMatch(@"[Rr]eposition|[Rr]epeat the film", p.Text)),
        iter: 2000);

    [Fact]
    public void References_NeverReassureAndAlwaysNameASource() => Assert.All(ReferenceTable.Rows, r =>
    {
        Assert.DoesNotMatch(Forbidden, r.Text);
        Assert.DoesNotMatch(Forbidden, r.Source.Citation);
        Assert.NotEmpty(r.Source.Citation);
    });

    [Fact]
    public void Evaluation_IsAFunctionOfItsInput() => Input.Sample(
        input => Assert.Equal(ElbowRules.Evaluate(input), ElbowRules.Evaluate(input)),
        iter: 500);
}
