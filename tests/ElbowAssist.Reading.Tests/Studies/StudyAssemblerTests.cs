using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading.Studies;
using static ElbowAssist.Reading.Tests.Studies.Film;

namespace ElbowAssist.Reading.Tests.Studies;

public sealed class StudyAssemblerTests
{
    private const string Baumann = "baumann-angle";

    [Theory]
    [InlineData(5.0, DifferenceState.LimitNotReached)]
    [InlineData(5.1, DifferenceState.BeyondLimit)]
    [InlineData(-5.1, DifferenceState.BeyondLimit)]
    public void BaumannSideDifference_WithoutSpread_TurnsAtFiveDegrees(double difference, DifferenceState state)
    {
        var study = Study(
            Of("l", View.Ap, Side.Left, measurements: Measured(Baumann, 72 + difference, 0)),
            Of("r", View.Ap, Side.Right, measurements: Measured(Baumann, 72, 0)));
        Assert.Equal(state, Assert.Single(study.SideDifferences).State);
    }

    [Fact]
    public void BaumannSideDifference_CountsOnlyIfItsIntervalExcludesTheLimit()
    {
        // 3-4-5: half-widths of 3 and 4 degrees add to 5 in quadrature.
        Study With(double difference) => Study(
            Of("l", View.Ap, Side.Left, measurements: Measured(Baumann, 72 + difference, 3)),
            Of("r", View.Ap, Side.Right, measurements: Measured(Baumann, 72, 4)));
        var near = Assert.Single(With(9).SideDifferences);
        Assert.Equal(4, near.Redraw95.Low, 9);
        Assert.Equal(14, near.Redraw95.High, 9);
        Assert.Equal(DifferenceState.EitherSideOfLimit, near.State);
        Assert.DoesNotContain(With(9).Prompts, p => p.Code == "baumann-angle.side-difference");
        Assert.Contains(With(10.1).Prompts, p => p.Code == "baumann-angle.side-difference" && p.FilmIds.Count == 2);
    }

    [Fact]
    public void SideDifference_IsTheAskedSideMinusTheOther()
    {
        var films = new[]
        {
            Of("l", View.Ap, Side.Left, measurements: Measured(Baumann, 80, 1)),
            Of("r", View.Ap, Side.Right, measurements: Measured(Baumann, 70, 1)),
        };
        var right = StudyAssembler.Assemble(new() { Tool = Tool, Films = films, InjuredSide = Side.Right });
        Assert.Equal(-10, Assert.Single(right.SideDifferences).Value, 9);
        Assert.Equal(10, Assert.Single(Study(films).SideDifferences).Value, 9);
    }

    [Fact]
    public void WithheldOnEitherSide_GivesNoDifference() => Assert.Empty(Study(
        Of("l", View.Ap, Side.Left, measurements: Measured(Baumann, 80, 1)),
        Of("r", View.Ap, Side.Right, measurements: Withheld(Baumann))).SideDifferences);

    [Fact]
    public void BeforeAndAfter_OnlyInMatchingViewsOfOneSide()
    {
        var study = Study(
            Of("before", View.Lateral, Side.Left, FilmContext.Acute, null, Measured("shaft-condylar-angle", 10, 3)),
            Of("after", View.Lateral, Side.Left, FilmContext.AfterReduction, null, Measured("shaft-condylar-angle", 38, 4)),
            Of("after-ap", View.Ap, Side.Left, FilmContext.AfterReduction, null, Measured("shaft-condylar-angle", 38, 4)),
            Of("other", View.Lateral, Side.Right, FilmContext.AfterReduction, null, Measured("shaft-condylar-angle", 38, 4)));
        var difference = Assert.Single(study.TimeDifferences);
        Assert.Equal(("before", "after"), (difference.EarlierFilmId, difference.LaterFilmId));
        Assert.Equal(28, difference.Value, 9);
        Assert.Equal(23, difference.Redraw95.Low, 9);
    }

    [Fact]
    public void ContradictedSide_StopsTheExportUntilTheReaderSettlesIt()
    {
        var film = Of("a", View.Lateral, Side.Left) with { SideStatements = [new("metadata", Side.Left), new("option", Side.Right)] };
        var stopped = Study(film);
        Assert.True(stopped.ExportIsStopped);
        Assert.Equal(Side.Unknown, stopped.Films[0].Side);
        var settled = Study(film with { SideStatements = [.. film.SideStatements, new(SideStatement.Reader, Side.Right)] });
        Assert.False(settled.ExportIsStopped);
        Assert.Equal(Side.Right, settled.Films[0].Side);
    }

    [Fact]
    public void TwoSexes_StopTheExport() => Assert.True(Study(
        Of("a", View.Lateral, Side.Left, patient: new(72, Sex.Female)),
        Of("b", View.Ap, Side.Left, patient: new(72, Sex.Male))).ExportIsStopped);

    [Fact]
    public void AgesOfFollowUp_MayDiffer() => Assert.Empty(Study(
        Of("a", View.Lateral, Side.Left, FilmContext.Acute, new(72, Sex.Female)),
        Of("b", View.Lateral, Side.Left, FilmContext.FollowUp, new(90, Sex.Female))).Conflicts);

    [Fact]
    public void MissingViews_AreNamedForTheInjuredSideOnly()
    {
        var study = StudyAssembler.Assemble(new()
        {
            Tool = Tool,
            InjuredSide = Side.Left,
            Films = [Of("a", View.Lateral, Side.Left), Of("b", View.Ap, Side.Right)],
        });
        var missing = Assert.Single(study.MissingViews);
        Assert.Equal(("view.ap", Side.Left), (missing.Code, missing.Side));
    }

    [Fact]
    public void MissingView_AfterTheReduction_IsNamed() => Assert.Contains("after the reduction", Assert.Single(Study(
        Of("a", View.Lateral, Side.Left), Of("b", View.Ap, Side.Left), Of("c", View.Lateral, Side.Left, FilmContext.AfterReduction)).MissingViews).Text, StringComparison.Ordinal);

    [Fact]
    public void SuspectedLateralCondyle_NamesTheInternalOblique()
    {
        StudyInput With(params StudyFilm[] films) => new() { Tool = Tool, Films = films, Marks = new() { Injuries = [SuspectedInjury.LateralCondyle] } };
        var lacking = StudyAssembler.Assemble(With(Of("a", View.Lateral, Side.Left), Of("b", View.Ap, Side.Left)));
        Assert.Equal("view.internal-oblique", Assert.Single(lacking.MissingViews).Code);
        var there = StudyAssembler.Assemble(With(Of("a", View.Lateral, Side.Left), Of("b", View.Ap, Side.Left), Of("c", View.Oblique, Side.Left)));
        Assert.Empty(there.MissingViews);
    }

    [Fact]
    public void OneSideAlone_NeverAsksForTheOther()
    {
        var study = Study(Of("a", View.Lateral, Side.Left), Of("b", View.Ap, Side.Left));
        Assert.All(study.MissingViews, m => Assert.Equal(Side.Left, m.Side));
        Assert.DoesNotContain(study.Prompts, p => p.Text.Contains("right", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.7, 0.1, "cross-view.radiocapitellar-lateral-miss")]
    [InlineData(0.1, 0.7, "cross-view.radiocapitellar-ap-miss")]
    [InlineData(-0.7, 0.7, "cross-view.radiocapitellar-both-miss")]
    public void RadiocapitellarLine_IsHeldAcrossTheViews(double lateral, double ap, string code) => Assert.Equal(code, Assert.Single(Study(
        Of("a", View.Lateral, Side.Left, measurements: Measured(RadiocapitellarRule.LateralNeck, lateral, 0.01, "1")),
        Of("b", View.Ap, Side.Left, measurements: Measured(RadiocapitellarRule.ApNeck, ap, 0.01, "1"))).CrossViewNotes).Code);

    [Fact]
    public void ViewsOfDifferentTimes_AreNotHeldTogether() => Assert.Empty(Study(
        Of("a", View.Lateral, Side.Left, FilmContext.Acute, null, Measured(RadiocapitellarRule.LateralNeck, 0.7, 0.01, "1")),
        Of("b", View.Ap, Side.Left, FilmContext.FollowUp, null, Measured(RadiocapitellarRule.ApNeck, 0.1, 0.01, "1"))).CrossViewNotes);

    [Fact]
    public void Prompts_NameTheirFilmsAndComeOnce()
    {
        var miss = Measured(AnteriorHumeralLineRule.Position, -0.3, 0.05, "1");
        var study = Study(
            Of("acute", View.Lateral, Side.Left, FilmContext.Acute, null, miss),
            Of("later", View.Lateral, Side.Left, FilmContext.FollowUp, null, miss));
        var prompt = Assert.Single(study.Prompts, p => p.Code == "anterior-humeral-line.capitellum-behind-line");
        Assert.Equal(["acute", "later"], prompt.FilmIds);
    }

    [Fact]
    public void SettledPrompts_MakeRoomForTheNext()
    {
        var marks = new ReaderMarks { Displaced = true, Open = true, Effusion = Call.Yes, Injuries = [SuspectedInjury.Supracondylar] };
        var study = StudyAssembler.Assemble(new() { Tool = Tool, Films = [Of("a", View.Lateral, Side.Left)], Marks = marks });
        Assert.Equal(3, study.VisiblePrompts.Count);
        Assert.Equal(study.Prompts.Take(3), study.VisiblePrompts);
    }

    [Fact]
    public void NoFilmOrTwoOfOneName_IsABug()
    {
        Assert.Throws<ArgumentException>(() => Study());
        Assert.Throws<ArgumentException>(() => Study(Of("a", View.Ap, Side.Left), Of("a", View.Lateral, Side.Left)));
    }
}
