using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.References;

namespace ElbowAssist.External.Rules;

/// <summary>Anterior humeral and radiocapitellar line against published series; the source stands beside each check.</summary>
public sealed class AlignmentRuleChecks
{
    private const string Ahl = AnteriorHumeralLineRule.Position;
    private const string Neck = RadiocapitellarRule.LateralNeck;

    // Definition of the thirds: position over the capitellum's extent.
    [Theory]
    [InlineData(0.20, AnteriorLineZone.AnteriorThird)]
    [InlineData(0.50, AnteriorLineZone.MiddleThird)]
    [InlineData(0.80, AnteriorLineZone.PosteriorThird)]
    [InlineData(-0.05, AnteriorLineZone.CapitellumBehindLine)]
    [InlineData(1.05, AnteriorLineZone.CapitellumBeforeLine)]
    public void AnteriorLine_Zones(double position, AnteriorLineZone zone) =>
        Assert.Equal(zone, AnteriorHumeralLineRule.ZoneOf(position));

    // Herman 2009 (J Bone Joint Surg Am 91:2188): under 4 years anterior about equal to middle third, from 4 to 9 years 62 % middle.
    [Theory]
    [InlineData(30, false)]
    [InlineData(96, true)]
    public void AnteriorThird_At2Point5And8Years(int months, bool prompted) =>
        Assert.Equal(prompted, Codes(View.Lateral, new(months, Sex.Male), Ahl, 0.25).Contains("anterior-humeral-line.anterior-third"));

    // Thesis on 493 children: not reliable under 2 years. Trap: the crossing under 2 years says nothing but its place.
    [Fact]
    public void AnteriorLine_Under2Years_PositionOnly()
    {
        Assert.Equal(AnteriorLineExpectation.PositionOnly, AnteriorHumeralLineRule.ExpectationAt(23));
        Assert.Empty(Codes(View.Lateral, new(23, Sex.Male), Ahl, 0.1));
    }

    // Herman 2009 against the thesis and Bašković 2024: 4 years and 5 years as turning points. The design shows both from 4 to 5.
    [Fact]
    public void AnteriorLine_4To5Years_ShowsBothReadings() =>
        Assert.Equal(["anterior-humeral-line.transition"], Codes(View.Lateral, new(54, Sex.Female), Ahl, 0.2));

    // Bašković 2024: middle third 25 % (0-3 y), 100 % (16-18 y), 88.5 % overall (n = 200).
    [Theory]
    [InlineData(24, "25 %")]
    [InlineData(200, "88.5 % of 200")]
    [InlineData(200, "all of 16 to 18 years")]
    public void AnteriorLine_SharesOfBaskovic(int months, string text) =>
        Assert.Contains(ReferenceTable.For(Ahl, new(months, null)), r => r.Source == Publications.Baskovic && r.Text.Contains(text, StringComparison.Ordinal));

    // Herman 2009: 31 / 52 / 18 % in 60 elbows (the printed shares add to 101).
    [Fact]
    public void AnteriorLine_SharesOfHerman() =>
        Assert.Contains(ReferenceTable.For(Ahl, new(70, null)), r => r.Text.Contains("31 %, middle third 52 %, posterior third 18 %", StringComparison.Ordinal));

    // Ramirez 2014: neck line misses 1.2 %, shaft line 12.7 %. Trap: the two lines are different measurements.
    [Fact]
    public void Radiocapitellar_NeckAndShaftMissRates()
    {
        Assert.Contains(ReferenceTable.For(Neck, new(60, null)), r => r.Text.Contains("1.2 %", StringComparison.Ordinal));
        Assert.Contains(ReferenceTable.For(RadiocapitellarRule.LateralShaft, new(60, null)), r => r.Text.Contains("12.7 %", StringComparison.Ordinal));
    }

    // Ramirez 2014: a shaft miss with the neck line crossing is the commoner finding in uninjured elbows, so it is no strong prompt.
    [Fact]
    public void Radiocapitellar_NeckIsPreferredToShaft()
    {
        var prompts = Prompts(View.Lateral, new(60, Sex.Male), (Neck, 0.1), (RadiocapitellarRule.LateralShaft, 0.6));
        Assert.DoesNotContain(prompts, p => p.Urgency <= Urgency.Strong);
    }

    // Fader 2016: 27 % central third on coronal images, never reliable on AP.
    [Fact]
    public void Radiocapitellar_ApOffCentreAt4Years_CountsLittle()
    {
        Assert.Equal(LineWeight.Little, RadiocapitellarRule.Weigh(View.Ap, 0.3, new(48, Sex.Male)));
        Assert.Empty(Codes(View.Ap, new(48, Sex.Male), RadiocapitellarRule.ApNeck, 0.3));
    }

    // Fader 2016: girls from 10, boys from 11 years.
    [Theory]
    [InlineData(119, Sex.Female, LineWeight.Little)]
    [InlineData(120, Sex.Female, LineWeight.SecondLook)]
    [InlineData(131, Sex.Male, LineWeight.Little)]
    [InlineData(132, Sex.Male, LineWeight.SecondLook)]
    public void Radiocapitellar_OffCentreCountsFromAgeBySex(int months, Sex sex, LineWeight weight) =>
        Assert.Equal(weight, RadiocapitellarRule.Weigh(View.Lateral, 0.3, new(months, sex)));

    // The table of check values gives these ages for any verdict; the design wins: a miss counts at every age.
    [Theory]
    [InlineData(12)]
    [InlineData(60)]
    [InlineData(119)]
    [InlineData(600)]
    public void Radiocapitellar_AMissCountsAtEveryAge_DesignOverTable(int months) =>
        Assert.Contains("radiocapitellar-line.miss", Codes(View.Lateral, new(months, Sex.Female), Neck, 0.55));

    // Fader 2016 prints 68 % for 54 of 82, which is 66 %. Trap: percentages printed are not always the counts.
    [Fact]
    public void Radiocapitellar_PrintedShareAndCountAreBothShown()
    {
        Assert.Equal(66, Math.Round(100.0 * 54 / 82));
        Assert.Contains(ReferenceTable.For(Neck, new(60, null)), r =>
            r.Text.Contains("68 %", StringComparison.Ordinal) && r.Text.Contains("54 of 82", StringComparison.Ordinal));
    }

    // Schamberger 2024: over 3.4 mm in 12.9 % of 53 healthy adults, so an offset alone is no proof.
    [Fact]
    public void Radiocapitellar_AdultOffsetInHealthy() =>
        Assert.Contains(ReferenceTable.For(Neck, new(400, null)), r => r.Text.Contains("3.4 mm in 12.9 %", StringComparison.Ordinal));

    // J Pediatr Orthop 2017;37:e150: AP crossing 30 % from the lateral edge (0-64 %), missed on 2 of 37.
    [Fact]
    public void Radiocapitellar_ApCrossingPlace() =>
        Assert.Contains(ReferenceTable.For(RadiocapitellarRule.ApNeck, new(60, null)), r => r.Text.Contains("30 % from the lateral edge (0 to 64 %)", StringComparison.Ordinal));

    // Rouleau 2012: window -5 to +13 % (on a diameter of 25 mm: -1.25 to +3.25 mm), adolescents and adults only.
    [Theory]
    [InlineData(400, -1.26, true)]
    [InlineData(400, -1.25, false)]
    [InlineData(400, 3.25, false)]
    [InlineData(400, 3.26, true)]
    [InlineData(60, 5.0, false)]
    public void RadiocapitellarRatio_Window(int months, double millimetres, bool prompted) =>
        Assert.Equal(prompted, Codes(View.Lateral, new(months, Sex.Male), "radiocapitellar-ratio", millimetres / 25).Contains("radiocapitellar-ratio.window"));

    // Rouleau 2012: two readers agreed only 0.52, so one whose redraw interval touches the window is not prompted.
    [Fact]
    public void RadiocapitellarRatio_IntervalTouchingTheWindow_IsSilent()
    {
        var prompts = ElbowRules.Evaluate(new()
        {
            Patient = new(400, Sex.Male),
            View = View.Lateral,
            Measurements = [new("radiocapitellar-ratio", 0.15, 0.12, 0.18, true)],
        });
        Assert.DoesNotContain(prompts, p => p.Code == "radiocapitellar-ratio.window");
    }

    private static IReadOnlyList<RulePrompt> Prompts(View view, Patient patient, params (string Name, double Value)[] values) =>
        ElbowRules.Evaluate(new()
        {
            Patient = patient,
            View = view,
            Measurements = [.. values.Select(v => new RuleMeasurement(v.Name, v.Value, v.Value, v.Value, false))],
        });

    private static string[] Codes(View view, Patient patient, string name, double value) =>
        [.. Prompts(view, patient, (name, value)).Select(p => p.Code)];
}
