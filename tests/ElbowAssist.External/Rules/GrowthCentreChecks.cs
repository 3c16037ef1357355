using System.Collections.Immutable;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;
using static ElbowAssist.Anatomy.Rules.Growth.CentreMark;
using static ElbowAssist.Anatomy.Rules.Growth.GrowthCentre;

namespace ElbowAssist.External.Rules;

/// <summary>Growth centres against the series; the source stands beside each check.</summary>
public sealed class GrowthCentreChecks
{
    private static readonly GrowthCentre[] Order = [Capitellum, RadialHead, MedialEpicondyle, Trochlea, Olecranon, LateralEpicondyle];

    // Cheng 1998 (1577 children, 3154 films): girls 1, 5, 5, 9, 9, 10 years; boys 1, 7, 7, 11, 11, 12.
    [Theory]
    [InlineData(Sex.Female, new double[] { 1, 5, 5, 9, 9, 10 })]
    [InlineData(Sex.Male, new double[] { 1, 7, 7, 11, 11, 12 })]
    public void Medians_OfCheng(Sex sex, double[] medians) =>
        Assert.Equal(medians, Order.Select(c => GrowthTable.Of(c, sex).Single(r => r.Source == Publications.Cheng).AppearanceMedian!.Value));

    // Cheng 1998: girls two years earlier, the capitellum excepted.
    [Fact]
    public void Medians_GirlsTwoYearsEarlier()
    {
        double Median(GrowthCentre c, Sex s) => GrowthTable.Of(c, s).Single(r => r.Source == Publications.Cheng).AppearanceMedian!.Value;
        Assert.All(Order, c => Assert.Equal(c == Capitellum ? 0 : 2, Median(c, Sex.Male) - Median(c, Sex.Female)));
    }

    // Acta Ortop Bras 2017;25:279 (439 patients, 544 films): years of appearance and of fusion.
    [Theory]
    [InlineData(Capitellum, 0, 1, 10, 15)]
    [InlineData(RadialHead, 2, 6, 12, 16)]
    [InlineData(MedialEpicondyle, 2, 8, 13, 17)]
    [InlineData(Trochlea, 5, 11, 10, 18)]
    [InlineData(Olecranon, 6, 11, 13, 16)]
    [InlineData(LateralEpicondyle, 8, 13, 12, 16)]
    public void Spans_OfMiyazaki(GrowthCentre centre, double from, double to, double fuseFrom, double fuseTo)
    {
        var row = GrowthTable.Of(centre, Sex.Male).Single(r => r.Source == Publications.Miyazaki);
        Assert.Equal(new AgeSpan(from, to), row.Appearance);
        Assert.Equal(new AgeSpan(fuseFrom, fuseTo), row.Fusion);
    }

    // Subadult database (computed tomography): trochlea median 8.1 (scale 0.9) in boys; 5 to 95 % by the logistic curve.
    [Fact]
    public void Trochlea_LogisticSpan()
    {
        var row = GrowthTable.Of(Trochlea, Sex.Male).Single(r => r.Source == Publications.SubadultDatabase);
        Assert.Equal(0.05, 1 / (1 + Math.Exp(-(row.Appearance.From - 8.1) / 0.9)), 12);
        Assert.Equal(0.95, 1 / (1 + Math.Exp(-(row.Appearance.To - 8.1) / 0.9)), 12);
    }

    // Miyazaki (2 to 6 years) and Cheng (boys' median about 7) contradict each other: the design calls nothing unexpected that any series holds.
    [Theory]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(8)]
    public void RadialHead_SeriesContradict_BothMarksStayPossible(double years)
    {
        Assert.NotEqual(GrowthVerdict.Unexpected, Verdict(RadialHead, Seen, years, Sex.Male));
        Assert.NotEqual(GrowthVerdict.Unexpected, Verdict(RadialHead, NotSeen, years, Sex.Male));
    }

    // Both series: no olecranon centre before 6 years in a boy.
    [Fact]
    public void BoyOf4_RadialHeadPossible_OlecranonUnexpected()
    {
        Assert.Equal(GrowthVerdict.Possible, Verdict(RadialHead, Seen, 4, Sex.Male));
        Assert.Equal(GrowthVerdict.Unexpected, Verdict(Olecranon, Seen, 4, Sex.Male));
    }

    // Subadult database: a girl of 3.2 years had capitellum, medial epicondyle and trochlea.
    [Fact]
    public void GirlOf3Point2_TrochleaIsPossible() =>
        Assert.Equal(GrowthVerdict.Possible, Verdict(Trochlea, Seen, 3.2, Sex.Female));

    // Subadult database: a girl of 7.7 years had all but the radial head.
    [Fact]
    public void GirlOf7Point7_AllButTheRadialHead_IsUnexpectedNowhereElse() =>
        Assert.All(new[] { Capitellum, MedialEpicondyle, Trochlea, Olecranon, LateralEpicondyle }, c =>
            Assert.NotEqual(GrowthVerdict.Unexpected, Verdict(c, Seen, 7.7, Sex.Female)));

    // No series reports a trochlea without medial epicondyle as a variant (Goodwin 2019); once in 1031 in the subadult database.
    [Fact]
    public void TrochleaBeforeMedialEpicondyle_AsksForTheJoint() =>
        Assert.Contains("growth.medial-epicondyle", Codes(8, Sex.Male, Capitellum, RadialHead, Trochlea));

    // Goodwin 2019: C-I in 15 of 64 (23 %), C-R-I-O in 9 of 28 (32 %).
    [Fact]
    public void Swaps_OfGoodwin_AreSilent()
    {
        Assert.Equal(23, Math.Round(100.0 * 15 / 64));
        Assert.Equal(32, Math.Round(100.0 * 9 / 28));
        Assert.Empty(Codes(4, Sex.Female, Capitellum, MedialEpicondyle));
        Assert.Empty(Codes(8, Sex.Female, Capitellum, RadialHead, MedialEpicondyle, Olecranon));
    }

    // Cheng 1998 has the olecranon before the trochlea, the usual mnemonic the reverse. Trap: either order is silent.
    [Fact]
    public void OlecranonAndTrochlea_EitherOrderIsSilent()
    {
        Assert.Empty(Codes(8, Sex.Female, Capitellum, RadialHead, MedialEpicondyle, Olecranon));
        Assert.Empty(Codes(8, Sex.Female, Capitellum, RadialHead, MedialEpicondyle, Trochlea));
    }

    // Subadult database, 465 of 465 elbows: medial epicondyle joins last of the humerus, on average.
    [Theory]
    [InlineData(Sex.Female)]
    [InlineData(Sex.Male)]
    public void MedialEpicondyle_JoinsAfterTheCapitellum(Sex sex)
    {
        double Latest(GrowthCentre c) => GrowthTable.Of(c, sex).Single(r => r.Source == Publications.SubadultDatabase).Fusion!.Value.To;
        Assert.True(Latest(MedialEpicondyle) > Latest(Capitellum));
    }

    private static GrowthVerdict Verdict(GrowthCentre centre, CentreMark mark, double years, Sex sex) =>
        GrowthJudgement.Of(centre, mark, new((int)Math.Round(years * 12), sex)).Verdict;

    private static string[] Codes(double years, Sex sex, params GrowthCentre[] seen) =>
    [
        .. ElbowRules.Evaluate(new()
        {
            Patient = new((int)(years * 12), sex),
            View = View.Ap,
            Marks = new() { GrowthCentres = Order.ToImmutableSortedDictionary(c => c, c => seen.Contains(c) ? Seen : NotSeen) },
        }).Select(p => p.Code),
    ];
}
