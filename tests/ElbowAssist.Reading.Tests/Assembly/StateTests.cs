using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Reasons;
using ElbowAssist.Testing;

namespace ElbowAssist.Reading.Tests.Assembly;

/// <summary>When a value is given, when it may lie on either side, and when it is withheld and why.</summary>
public sealed class StateTests
{
    private const string Position = "anterior-humeral-line.position";

    [Fact]
    public void FarFromLimits_IsMeasured()
    {
        var reading = ReadingAssembler.Default.Assemble(Films.Adult(View.Lateral));
        var line = reading.Find(Position);
        Assert.Equal(MeasurementState.Measured, line.State);
        Assert.Equal(0.525, line.Value!.Value, 1e-3);
        Assert.Empty(line.Reasons);
        Assert.Equal(1, line.Zones!["middle-third"], 1e-3);
        Assert.Contains(reading.Lines, l => l.Name == Position && l.Spread is { OffsetVariance: > 0 });
        Assert.Contains(Position, reading.Adequacy.CanCarry);
    }

    [Fact]
    public void IntervalOverALimit_IsEitherSide()
    {
        // (5.17 + 10 - 8.5) / 20 = 0.3335, a hair behind the first third.
        var line = ReadingAssembler.Default.Assemble(Films.Adult(View.Lateral, new InventedElbow { CapitellumForward = 5.17 })).Find(Position);
        Assert.Equal(MeasurementState.EitherSide, line.State);
        Assert.Equal([ReasonCodes.IntervalCrossesLimit], line.Reasons);
        Assert.InRange(line.Zones!["anterior-third"], 0.3, 0.7);
    }

    [Fact]
    public void TwoConstructionsInDifferentZones_AreBothEitherSide_AndSaySo()
    {
        var reading = ReadingAssembler.Default.Assemble(
            Films.Adult(View.Lateral, new InventedElbow { CapitellumForward = 9, Bow = 3.2 }, 0.02));
        foreach (var name in new[] { Position, "anterior-humeral-line.shaft.position" })
        {
            var line = reading.Find(name);
            Assert.Equal(MeasurementState.EitherSide, line.State);
            Assert.Contains(ReasonCodes.ConstructionsDiffer, line.Reasons);
            Assert.Contains(ReasonTable.Default[ReasonCodes.ConstructionsDiffer].Text, line.Note, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AWithheldConstruction_HasNoSay()
    {
        var input = Films.Adult(View.Lateral, new InventedElbow { CapitellumForward = 9, Bow = 3.2 }, 0.02);
        var without = input with { Landmarks = [.. input.Landmarks.Where(l => l.Name != LandmarkNames.HumerusAnterior(1))] };
        var reading = ReadingAssembler.Default.Assemble(without);
        Assert.Equal(MeasurementState.Withheld, reading.Find("anterior-humeral-line.shaft.position").State);
        Assert.Equal([ReasonCodes.HumeralLevelsMissing], reading.Find("anterior-humeral-line.shaft.position").Reasons);
        Assert.DoesNotContain(ReasonCodes.ConstructionsDiffer, reading.Find(Position).Reasons);
    }

    [Theory]
    [InlineData(Position, true)]
    [InlineData("shaft-condylar-angle", true)]
    [InlineData("radiocapitellar-ratio", true)]
    [InlineData("radiocapitellar-line.lateral.neck.offset", false)]
    [InlineData("flexion-angle", false)]
    public void RotatedLateral_WithholdsWhatNeedsATrueView_AndKeepsTheRest(string name, bool withheld)
    {
        var input = Films.Adult(View.Lateral);
        var reading = ReadingAssembler.Default.Assemble(input with { View = input.View with { ErrorDegrees = 25 } });
        Assert.Equal(withheld, reading.Find(name).State == MeasurementState.Withheld);
        Assert.Equal(withheld ? [FilmReasons.FilmRotated] : [], reading.Find(name).Reasons);
        Assert.Contains(reading.Reasons, r =>
            r.Text == "The film may be rotated, or the distal humerus may be: look for a fracture before blaming the view.");
    }

    [Fact]
    public void ArcsFarApart_CountAsRotation()
    {
        var reading = ReadingAssembler.Default.Assemble(Films.Adult(View.Lateral, new InventedElbow { TrochleaOffset = 9 }));
        Assert.Equal([FilmReasons.FilmRotated], reading.Find(Position).Reasons);
        Assert.Equal(0.45, reading.Find("true-lateral.arc-offset").Value!.Value, 0.01);
    }

    [Theory]
    [InlineData(90, EvidenceState.LookHere)]
    [InlineData(60, EvidenceState.NotAssessable)]
    public void FatPads_AreLookedAtNearARightAngleOnly(double flexion, EvidenceState state)
    {
        var reading = ReadingAssembler.Default.Assemble(Films.Adult(View.Lateral, new InventedElbow { Flexion = flexion }));
        Assert.All(reading.Evidence, e => Assert.Equal(state, e.State));
        Assert.Equal(2, reading.Evidence.Count);
        Assert.Equal(state == EvidenceState.NotAssessable, reading.Find("fat-pad.anterior.angle").State == MeasurementState.Withheld);
    }

    [Theory]
    [InlineData("exposure-noisy", EvidenceState.NotAssessable)]
    [InlineData("image-blurred", EvidenceState.NotAssessable)]
    [InlineData("cast-seen", EvidenceState.NotAssessable)]
    [InlineData("exposure-burned-out", EvidenceState.LookHere)]
    public void FatPads_AreNotLookedAtWhereTheFilmHidesThem_WhileLinesAreLaid(string reason, EvidenceState state)
    {
        var input = Films.Adult(View.Lateral, new InventedElbow { Flexion = 90 });
        var reading = Films.Quick.Assemble(input with { Checks = [new AdequacyCheck("exposure", 2, 1, false, reason)] });
        Assert.All(reading.Evidence, e => Assert.Equal(state, e.State));
        Assert.Equal(state == EvidenceState.NotAssessable, reading.Find("fat-pad.anterior.angle").Reasons.Contains(reason));
        Assert.NotNull(reading.Find("anterior-humeral-line.position").Value);
        Assert.Contains(reading.Reasons, r => r.Code == reason);
    }

    [Fact]
    public void FatPadAngle_HasItsLimitInChildrenOnly()
    {
        var elbow = new InventedElbow { FatPad = 16.2, PhysisTilt = 40 };
        var adult = Films.Adult(View.Lateral, elbow);
        var child = adult with { Patient = new Patient(96, Sex.Male) };
        Assert.Equal(MeasurementState.Measured, ReadingAssembler.Default.Assemble(adult).Find("fat-pad.anterior.angle").State);
        Assert.Equal(MeasurementState.EitherSide, ReadingAssembler.Default.Assemble(child).Find("fat-pad.anterior.angle").State);
    }

    [Theory]
    [InlineData(40 * 12, FilmContext.AfterReduction, 0.2, null)]
    [InlineData(40 * 12, FilmContext.Acute, 0.2, FilmReasons.NotAfterReduction)]
    [InlineData(10 * 12, FilmContext.AfterReduction, 0.2, FilmReasons.AdultsOnly)]
    [InlineData(null, FilmContext.AfterReduction, 0.2, FilmReasons.AgeUnknown)]
    [InlineData(40 * 12, FilmContext.AfterReduction, null, FilmReasons.SpacingUnknown)]
    public void UlnohumeralGap_OnlyInAdultsAfterReductionWithSpacing(int? age, FilmContext context, double? spacing, string? reason)
    {
        var input = Films.Adult(View.Lateral);
        var gap = ReadingAssembler.Default.Assemble(input with
        {
            Patient = new Patient(age, null),
            Context = context,
            Image = input.Image with { RowSpacingMm = spacing, ColumnSpacingMm = spacing },
        }).Find("ulnohumeral-gap");
        Assert.Equal(reason is null ? [] : [reason], gap.Reasons);
        Assert.Equal(reason is null, gap.Value is not null);
    }

    [Fact]
    public void RadiocapitellarRatio_HasItsWindowFromAdolescenceOnly()
    {
        var edge = Films.Adult(View.Lateral, new InventedElbow { HeadForward = 2.6 }, 0.3); // 2.6 / 20 = 0.13
        var child = edge with { Patient = new Patient(8 * 12, Sex.Female) };
        Assert.Equal(MeasurementState.EitherSide, ReadingAssembler.Default.Assemble(edge).Find("radiocapitellar-ratio").State);
        Assert.Equal(MeasurementState.Measured, ReadingAssembler.Default.Assemble(child).Find("radiocapitellar-ratio").State);
    }

    [Fact]
    public void Baumann_PrintsConventionBBesideA()
    {
        var child = Films.Adult(View.Ap) with { Patient = new Patient(7 * 12, Sex.Female) };
        var angle = ReadingAssembler.Default.Assemble(child).Find("baumann-angle");
        Assert.Equal(72, angle.Value!.Value, 1e-6);
        Assert.Contains("Convention B: 18.0 degrees.", angle.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Baumann_IsWithheldWithClosedPhysis_TiltedHumerus_OrShortShaft()
    {
        var child = Films.Adult(View.Ap) with { Patient = new Patient(7 * 12, Sex.Female) };
        Assert.Equal([FilmReasons.PhysisClosed], Baumann(child with { Patient = new Patient(20 * 12, Sex.Female) }));
        Assert.Equal([FilmReasons.HumerusNotFlat], Baumann(child with { Statements = new ReaderStatements(true, false) }));
        Assert.Equal([ReasonCodes.PhysisNotVisible], Baumann(Without(child, "capitellum.physis.lateral")));

        // Levels 2.75 and 2.0 and 1.25 W span 1.5 W; without the lowest 0.75 W are left.
        Assert.Empty(Baumann(Without(child, "humerus.lateral.1")));
        Assert.Equal([ReasonCodes.HumeralLevelsSpanShort], Baumann(Without(child, "humerus.lateral.1", "humerus.lateral.4")));
    }

    [Fact]
    public void CarryingAngle_OnlyWhenTheReaderSaidExtendedAndSupinated()
    {
        var input = Films.Adult(View.Ap);
        Assert.Equal(12, ReadingAssembler.Default.Assemble(input).Find("carrying-angle").Value!.Value, 1e-6);
        Assert.Equal(
            [FilmReasons.NotStatedExtendedSupinated],
            ReadingAssembler.Default.Assemble(input with { Statements = new ReaderStatements() }).Find("carrying-angle").Reasons);
    }

    [Fact]
    public void UlnarBow_OnlyByHandOnAForearmFilm()
    {
        var byModel = Films.Adult(View.Lateral) with { Statements = new ReaderStatements(ForearmFilm: true) };
        Assert.Equal([FilmReasons.NeedsForearmFilm], ReadingAssembler.Default.Assemble(byModel).Find("ulnar-bow").Reasons);
        var byHand = byModel with { Landmarks = new InventedElbow().Landmarks(View.Lateral, source: LandmarkSource.Reader) };
        Assert.Empty(ReadingAssembler.Default.Assemble(byHand).Find("ulnar-bow").Reasons);
        Assert.Equal(
            [FilmReasons.NeedsForearmFilm],
            ReadingAssembler.Default.Assemble(byHand with { Statements = new ReaderStatements() }).Find("ulnar-bow").Reasons);
    }

    [Fact]
    public void LandmarkOnWhichPassesDisagree_IsNotUsed()
    {
        var input = Films.Adult(View.Lateral) with
        {
            Unusable = [new UnusableLandmark(LandmarkNames.HumerusWaist, FilmReasons.PassesDisagree)],
        };
        Assert.Equal([FilmReasons.PassesDisagree], ReadingAssembler.Default.Assemble(input).Find("shaft-condylar-angle").Reasons);
    }

    [Fact]
    public void PlacementsByHand_GetAnAssumedSpread_AndSaySo()
    {
        var input = Films.Adult(View.Lateral) with
        {
            Landmarks = new InventedElbow().Landmarks(View.Lateral, source: LandmarkSource.Reader),
        };
        var line = ReadingAssembler.Default.Assemble(input).Find(Position);
        Assert.True(line.Redraw95!.Value.High - line.Redraw95.Value.Low > 0.02);
        Assert.Contains("assumed spread", line.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void UncertainLandmarks_AreWithheldRatherThanPrintedWithAnIntervalForEverything()
    {
        var line = ReadingAssembler.Default.Assemble(Films.Adult(View.Lateral, deviationMm: 4)).Find(Position);
        Assert.Contains(ReasonCodes.LandmarkSpread, line.Reasons);
    }

    [Fact]
    public void CrossedCortices_LeaveNothing()
    {
        var input = Films.Adult(View.Lateral);
        var swapped = input.Landmarks.ToDictionary(l => l.Name, StringComparer.Ordinal);
        var (a, b) = (LandmarkNames.HumerusAnterior(3), LandmarkNames.HumerusPosterior(3));
        (swapped[a], swapped[b]) = (swapped[a] with { Position = swapped[b].Position }, swapped[b] with { Position = swapped[a].Position });
        var reading = ReadingAssembler.Default.Assemble(input with { Landmarks = [.. swapped.Values] });
        Assert.All(reading.Measurements, m => Assert.Contains(FilmReasons.ShapeImplausible, m.Reasons));
    }

    [Fact]
    public void Oblique_IsNotRefused_ButCarriesNoLine()
    {
        var input = Films.Adult(View.Lateral);
        var reading = ReadingAssembler.Default.Assemble(input with { View = input.View with { Name = View.Oblique } });
        Assert.False(reading.Adequacy.Refused);
        Assert.Empty(reading.Measurements);
        Assert.Equal([FilmReasons.ObliqueView], reading.Reasons.Select(r => r.Code));
    }

    [Fact]
    public void MissedCapitellum_BringsThePromptOfTheRules()
    {
        var reading = ReadingAssembler.Default.Assemble(
            Films.Adult(View.Lateral, new InventedElbow { CapitellumForward = -6 }) with { Patient = new Patient(72, Sex.Male) });
        Assert.Contains(reading.Prompts, p => p.Code == "anterior-humeral-line.capitellum-behind-line");
    }

    [Fact]
    public void StatedAdult_StandsForAnUnknownAge()
    {
        var input = Films.Adult(View.Lateral, new InventedElbow { HeadForward = 2.6 }, 0.3) with { Patient = Patient.Unknown };
        Assert.Equal(MeasurementState.Measured, ReadingAssembler.Default.Assemble(input).Find("radiocapitellar-ratio").State);
        var stated = input with { Statements = new ReaderStatements(Maturity: Maturity.Adult) };
        Assert.Equal(MeasurementState.EitherSide, ReadingAssembler.Default.Assemble(stated).Find("radiocapitellar-ratio").State);
    }

    private static IReadOnlyList<string> Baumann(ReadingInput input) => ReadingAssembler.Default.Assemble(input).Find("baumann-angle").Reasons;

    private static ReadingInput Without(ReadingInput input, params string[] names) =>
        input with { Landmarks = [.. input.Landmarks.Where(l => !names.Contains(l.Name, StringComparer.Ordinal))] };
}
