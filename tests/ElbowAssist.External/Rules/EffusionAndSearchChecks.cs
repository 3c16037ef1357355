using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.References;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Testing;

namespace ElbowAssist.External.Rules;

/// <summary>Effusion, associated injuries and ranges without a limit; the source stands beside each check.</summary>
public sealed class EffusionAndSearchChecks
{
    // Skaggs 1999: 34 of 45 = 76 %. Kappelhof: 44.6 % pooled (30.4-59.7). They contradict each other; both must be shown.
    [Fact]
    public void ChildWithEffusion_BothSharesAreShown()
    {
        Assert.Equal(76, Math.Round(100.0 * 34 / 45));
        var prompt = Prompts(96, new() { Effusion = Call.Yes }).Single(p => p.Code == "effusion.second-look");
        foreach (var part in new[] { "76 %", "34 of 45", "44.6 %", "30.4 to 59.7" })
        {
            Assert.Contains(part, prompt.Text, StringComparison.Ordinal);
        }

        Assert.Contains("Skaggs", prompt.Source, StringComparison.Ordinal);
        Assert.Contains("Kappelhof", prompt.Source, StringComparison.Ordinal);
        Assert.Contains("2001;83:1435", prompt.Source, StringComparison.Ordinal);
    }

    // Kappelhof pools ten studies: 104 of 250 is 41.6 %, printed 44.6 %. Trap: a pooled share is not its count.
    [Fact]
    public void PooledShare_IsShownWithItsCount()
    {
        Assert.Equal(41.6, 100.0 * 104 / 250, 6);
        Assert.Contains("104 of 250", EffusionTable.ChildShares[1].Text, StringComparison.Ordinal);
    }

    // Skaggs 1999: 53, 26, 12, 9 %; Kappelhof: 43, 19, 17, 14 %. The order is that of the larger pool.
    [Fact]
    public void ChildPlaces_FollowThePooledOrder()
    {
        Assert.Equal([43, 19, 17, 14], EffusionTable.ChildPlaces.Select(p => p.Shares.Single(s => s.Source == Publications.Kappelhof).Percent));
        Assert.Equal([53, 26, 9, 12], EffusionTable.ChildPlaces.Select(p => p.Shares.Single(s => s.Source == Publications.Skaggs).Percent));
    }

    // O'Dwyer 2004: 75 % of 20, radial head 86.6 %; Major 2002: 6 of 6.
    [Fact]
    public void AdultWithEffusion_BothSharesAndTheRadialHeadFirst()
    {
        var text = Prompts(480, new() { Effusion = Call.Yes }).Single(p => p.Code == "effusion.second-look").Text;
        Assert.Contains("75 % of 20", text, StringComparison.Ordinal);
        Assert.Contains("6 of 6", text, StringComparison.Ordinal);
        Assert.Equal("radial head and neck", EffusionTable.AdultPlaces[0].Place);
    }

    // Poppelaars 2022: cut-off 16°; that 16.0 itself counts is an assumption, the abstract says only "cut-off 16°".
    [Theory]
    [InlineData(96, 15.9, false)]
    [InlineData(96, 16.0, true)]
    [InlineData(480, 20.0, false)]
    public void AnteriorFatPadAngle_ChildrenOnly(int months, double degrees, bool prompted) =>
        Assert.Equal(prompted, Prompts(months, ReaderMarks.None, ("fat-pad.anterior.angle", degrees)).Any(p => p.Code == "effusion.anterior-angle"));

    // Murphy 1977: effusion without injury in infection, arthritis, bleeding.
    [Fact]
    public void EffusionWithoutTrauma_NamesTheThree()
    {
        var text = Prompts(96, new() { Effusion = Call.Yes, Trauma = Call.No })[0].Text;
        Assert.All(new[] { "septic", "bleeding", "arthritis" }, w => Assert.Contains(w, text, StringComparison.Ordinal));
    }

    // Coonrad 2005: gap of 4 mm or more, unstressed lateral after a reduction.
    [Theory]
    [InlineData(3.9, false)]
    [InlineData(4.0, true)]
    public void DropSign_AfterReductionOnly(double gap, bool prompted)
    {
        var prompts = ElbowRules.Evaluate(new()
        {
            Patient = new(480, Sex.Male),
            View = View.Lateral,
            Context = FilmContext.AfterReduction,
            Measurements = [new("ulnohumeral-gap", gap, gap, gap, false)],
        });
        Assert.Equal(prompted, prompts.Any(p => p.Code == "ulnohumeral-gap.limit"));
    }

    // Eur J Orthop Surg Traumatol 2019 flags below 40°; mean 41.6°, range 30-70° in uninjured children (J Pediatr Orthop 2008;28:463).
    // The design wins: a cut there would flag a large part of a healthy population, so the range is shown and nothing prompted.
    [Theory]
    [InlineData(30)]
    [InlineData(39)]
    [InlineData(41)]
    [InlineData(70)]
    public void ShaftCondylarAngle_HasNoLimit_DesignOverTable(double degrees)
    {
        Assert.Empty(Prompts(96, ReaderMarks.None, ("shaft-condylar-angle", degrees)));
        var rows = ReferenceTable.For("shaft-condylar-angle", new(96, null));
        Assert.Contains(rows, r => r.Text.Contains("30 to 70°", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.Text.Contains("sensitivity 76 %, specificity 93 %", StringComparison.Ordinal));
    }

    // Shank 2011: 50.8 ± 6; Hasegawa 2018: 45 (22-70); Kang 1994: 45.3 ± 8.2. Not one constant; the design sets no limit.
    [Fact]
    public void LateralCapitellohumeralAngle_ShowsAllMeansAndNoLimit()
    {
        var rows = ReferenceTable.For("lateral-capitellohumeral-angle", new(60, null));
        Assert.All(new[] { "50.8°", "45°", "45.3°" }, mean => Assert.Contains(rows, r => r.Text.Contains("mean " + mean, StringComparison.Ordinal)));
        Assert.Empty(Prompts(60, ReaderMarks.None, ("lateral-capitellohumeral-angle", 30)));
    }

    // Shank 2011: 71.5 ± 6.2 in convention A. Trap: rows name the convention.
    [Fact]
    public void BaumannRows_NameTheirConvention()
    {
        var rows = ReferenceTable.For("baumann-angle", new(60, null));
        Assert.Contains(rows, r => r.Text.Contains("mean 71.5°, SD 6.2", StringComparison.Ordinal));
        Assert.All(rows, r => Assert.StartsWith("convention A", r.Text, StringComparison.Ordinal));
    }

    // Siriraj Med J 2018: 6° at 6 years, 11° at 15.
    [Fact]
    public void CarryingAngle_ByAge() =>
        Assert.Contains(ReferenceTable.For("carrying-angle", new(72, null)), r => r.Text.Contains("6° at 6 years, 11° at 15 years", StringComparison.Ordinal));

    // Hasegawa 2017: 14.6° (4-28) in 62 children of 2 to 11 years; Kushwaha 2022: right 8.85 ± 2.09, left 9.07 ± 2.13 in 140. Both are shown.
    [Fact]
    public void CarryingAngle_OnFilmsOfChildren_ShowsBothSeries()
    {
        var rows = ReferenceTable.For("carrying-angle", new(72, null)).Select(r => r.Text).ToList();
        Assert.Contains(rows, r => r.Contains("14.6°, range 4 to 28° in 62", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.Contains("8.85°, SD 2.09; left 9.07°, SD 2.13 in 140", StringComparison.Ordinal));
    }

    // Zampagni 2008: 12.42° ± 4.06 in 44 adult arms; no child is held against it.
    [Theory]
    [InlineData(480, true)]
    [InlineData(72, false)]
    public void CarryingAngle_AdultSeries(int months, bool shown) =>
        Assert.Equal(shown, ReferenceTable.For("carrying-angle", new(months, null)).Any(r => r.Text.Contains("12.42°, SD 4.06", StringComparison.Ordinal)));

    // A difference of more than 5° between sides is taken up (common practice in the sources of the Baumann angle): 5.0 no, 5.1 yes,
    // and by design only if the interval of the difference excludes 5°.
    [Theory]
    [InlineData(5.0, 0, DifferenceState.LimitNotReached)]
    [InlineData(5.1, 0, DifferenceState.BeyondLimit)]
    [InlineData(7.0, 3, DifferenceState.EitherSideOfLimit)]
    [InlineData(-5.1, 0, DifferenceState.BeyondLimit)]
    public void BaumannSideDifference_TurnsAtFiveDegrees(double difference, double half, DifferenceState state)
    {
        StudyFilm Film(string id, Side side, double angle)
        {
            var sample = SampleReadings.Ap();
            var baumann = sample.Measurements[0] with { Name = "baumann-angle", Unit = "deg", Value = angle, Redraw95 = new(angle - half, angle + half), State = MeasurementState.Measured };
            return new(id, sample with { Side = side, Measurements = [baumann] }, []);
        }

        var study = StudyAssembler.Assemble(new() { Tool = SampleReadings.Ap().Tool, Films = [Film("l", Side.Left, 72 + difference), Film("r", Side.Right, 72)], InjuredSide = Side.Left });
        Assert.Equal(state, study.SideDifferences.Single(d => d.Name == "baumann-angle").State);
    }

    // Surg Radiol Anat 2007;29:279: 167.8° (160.5-178). Trap: obtuse and acute form are one angle, 12.2° off straight, 2 to 19.5°.
    [Fact]
    public void RadialNeckShaft_ObtuseAndAcuteFormAgree()
    {
        var text = ReferenceTable.For("radial-neck-shaft-angle", new(480, null)).Single(r => r.Source == Publications.NeckMorphometry).Text;
        Assert.Equal(12.2, 180 - 167.8, 9);
        Assert.Equal(19.5, 180 - 160.5, 9);
        Assert.Contains("12.2°", text, StringComparison.Ordinal);
        Assert.Contains("167.8°, 160.5 to 178°", text, StringComparison.Ordinal);
    }

    // Emerg Radiol 2020: 12 of 47 missed by the radiology report.
    [Fact]
    public void UlnarShaft_AsksForTheRadialHead() =>
        Assert.Contains(Prompts(72, new() { Injuries = [SuspectedInjury.UlnarShaft] }), p => p.Text.Contains("12 of 47", StringComparison.Ordinal));

    // Benedetti Valentini 2013: no radial pulse in 11 of 48 = 23 % of completely displaced supracondylar fractures.
    [Fact]
    public void DisplacedSupracondylar_QuotesThePulse()
    {
        Assert.Equal(23, Math.Round(100.0 * 11 / 48));
        Assert.Contains(Prompts(72, new() { Displaced = true, Injuries = [SuspectedInjury.Supracondylar] }), p => p.Text.Contains("11 of 48", StringComparison.Ordinal));
    }

    // Calogero 2024: forearm or wrist fracture with it in 3.5 to 5.3 %.
    [Fact]
    public void Supracondylar_AsksForTheForearm() =>
        Assert.Contains(Prompts(72, new() { Injuries = [SuspectedInjury.Supracondylar] }), p => p.Text.Contains("3.5 to 5.3 %", StringComparison.Ordinal));

    // Lincoln 1994 calls 0.01 mm of ulnar bow "any": a tenth of a pixel. Trap: it needs a forearm film and no rule rests on it.
    [Theory]
    [InlineData(0.05)]
    [InlineData(3.5)]
    public void UlnarBow_RaisesNothingOnAnElbowFilm_DesignOverTable(double millimetres)
    {
        Assert.Empty(Prompts(72, ReaderMarks.None, ("ulnar-bow", millimetres)));
        Assert.Empty(ReferenceTable.For("ulnar-bow", new(72, null)));
    }

    // Camp 1993 (from memory: 6° per 10° of rotation) and a 2020 series contradict each other; what was never seen is not shown.
    // The teardrop angle is a measure of the wrist. Traps: neither reaches a reader, nor does any teaching page.
    [Theory]
    [InlineData("Camp")]
    [InlineData("Garn")]
    [InlineData("Girdany")]
    [InlineData("Worlock")]
    [InlineData("Beals")]
    [InlineData("Biyani")]
    [InlineData("Rogers LF")]
    [InlineData("eardrop")]
    [InlineData("adiopaedia")]
    [InlineData("heeless")]
    [InlineData("rthobullets")]
    public void Tables_RestOnNothingUnseenAndOnNoTeachingPage(string word)
    {
        var texts = ReferenceTable.Rows.SelectMany(r => new[] { r.Text, r.Source.Citation })
            .Concat(AssociatedInjuryTable.Rows.SelectMany(r => r.Sources.Select(s => s.Citation).Append(r.Text)))
            .Concat(Anatomy.Rules.Growth.GrowthTable.Rows.Select(r => r.Source.Citation));
        Assert.All(texts, t => Assert.DoesNotContain(word, t, StringComparison.Ordinal));
    }

    private static IReadOnlyList<RulePrompt> Prompts(int months, ReaderMarks marks, params (string Name, double Value)[] values) =>
        ElbowRules.Evaluate(new()
        {
            Patient = new(months, Sex.Male),
            View = View.Lateral,
            Marks = marks,
            Measurements = [.. values.Select(v => new RuleMeasurement(v.Name, v.Value, v.Value, v.Value, false))],
        });
}
