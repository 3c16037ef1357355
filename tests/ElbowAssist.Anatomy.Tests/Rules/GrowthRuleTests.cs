using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;
using static ElbowAssist.Anatomy.Rules.Growth.CentreMark;
using static ElbowAssist.Anatomy.Rules.Growth.GrowthCentre;
using static ElbowAssist.Anatomy.Tests.Rules.Case;

namespace ElbowAssist.Anatomy.Tests.Rules;

public sealed class GrowthRuleTests
{
    private const string LookInJoint = "growth.medial-epicondyle";

    [Fact]
    public void BoyOfFour_RadialHeadIsPossibleAndOlecranonUnexpected()
    {
        Assert.Equal(GrowthVerdict.Possible, GrowthJudgement.Of(RadialHead, Seen, Boy(4)).Verdict);
        Assert.Equal(GrowthVerdict.Unexpected, GrowthJudgement.Of(Olecranon, Seen, Boy(4)).Verdict);
        var prompt = Marked(Boy(4), Centres((Capitellum, Seen), (RadialHead, Seen), (Olecranon, Seen))).Of("growth.unexpected")!;
        Assert.Contains("Olecranon", prompt.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("adial head", prompt.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Capitellum, Seen, 6, GrowthVerdict.Expected)]
    [InlineData(Capitellum, NotSeen, 6, GrowthVerdict.Unexpected)]
    [InlineData(LateralEpicondyle, NotSeen, 6, GrowthVerdict.Expected)]
    [InlineData(Capitellum, Fused, 6, GrowthVerdict.Unexpected)]
    [InlineData(Capitellum, NotChecked, 6, GrowthVerdict.NotJudged)]
    public void Verdicts_FollowTheSeries(GrowthCentre centre, CentreMark mark, double years, GrowthVerdict expected) =>
        Assert.Equal(expected, GrowthJudgement.Of(centre, mark, Boy(years)).Verdict);

    [Fact]
    public void WithoutAge_NothingIsJudged() =>
        Assert.Equal(GrowthVerdict.NotJudged, GrowthJudgement.Of(Olecranon, Seen, new Patient(null, Sex.Male)).Verdict);

    [Fact]
    public void SexUnknown_UnexpectedOnlyOutsideBoth()
    {
        // The trochlea is seen from about 3 years in girls and from 5 in boys.
        Assert.Equal(GrowthVerdict.Unexpected, GrowthJudgement.Of(Trochlea, Seen, Boy(4)).Verdict);
        Assert.Equal(GrowthVerdict.Possible, GrowthJudgement.Of(Trochlea, Seen, new Patient(48, null)).Verdict);
        Assert.Equal(GrowthVerdict.Unexpected, GrowthJudgement.Of(Trochlea, Seen, new Patient(30, null)).Verdict);
    }

    [Fact]
    public void TrochleaWithoutMedialEpicondyle_AsksForTheJoint() =>
        Assert.Equal(Urgency.Strong, Marked(Boy(8), Centres((Capitellum, Seen), (RadialHead, Seen), (MedialEpicondyle, NotSeen), (Trochlea, Seen))).Of(LookInJoint)!.Urgency);

    [Theory]
    [InlineData(NotChecked)]
    [InlineData(Fused)]
    public void TrochleaWithoutMedialEpicondyle_IsSilentWhenItWasNotLookedForOrFused(CentreMark epicondyle) =>
        Assert.Null(Marked(Boy(13.5), Centres((MedialEpicondyle, epicondyle), (Trochlea, Seen))).Of(LookInJoint));

    [Fact]
    public void HarmlessSwaps_AreSilent()
    {
        Assert.Empty(Marked(Girl(4), Centres((Capitellum, Seen), (RadialHead, NotSeen), (MedialEpicondyle, Seen))));
        Assert.Empty(Marked(Girl(8), Centres((Capitellum, Seen), (RadialHead, Seen), (MedialEpicondyle, Seen), (Trochlea, NotSeen), (Olecranon, Seen))));
    }

    [Fact]
    public void MedialEpicondyleAbsentThoughExpected_AsksForTheJoint()
    {
        Assert.NotNull(Marked(Boy(10), Centres((MedialEpicondyle, NotSeen))).Of(LookInJoint));
        Assert.Null(Marked(Boy(6), Centres((MedialEpicondyle, NotSeen))).Of(LookInJoint));
    }

    [Fact]
    public void AnyDislocationInAChild_AsksForTheJoint()
    {
        var marks = new ReaderMarks { Dislocated = true };
        Assert.NotNull(Marked(Girl(9), marks).Of(LookInJoint));
        Assert.Null(Marked(Girl(40), marks).Of(LookInJoint));
    }

    [Fact]
    public void EveryRow_HasASourceAndAnOrderedSpan() => Assert.All(GrowthTable.Rows, r =>
    {
        Assert.NotEmpty(r.Source.Citation);
        Assert.True(r.Appearance.From < r.Appearance.To);
        Assert.True(r.Fusion is not { } f || f.From < f.To);
    });

    [Fact]
    public void EveryCentre_AppearsBeforeItFuses()
    {
        foreach (var centre in Enum.GetValues<GrowthCentre>())
        {
            foreach (var sex in Enum.GetValues<Sex>())
            {
                Assert.True(GrowthTable.Appearance(centre, sex).From < GrowthTable.Fusion(centre, sex).From, $"{centre} {sex}");
            }
        }
    }
}
