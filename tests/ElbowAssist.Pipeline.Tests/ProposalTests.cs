using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Judging;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Pipeline.Tests;

/// <summary>What is calibrated from written proposals must be what the films would have given.</summary>
public sealed class ProposalTests
{
    private static readonly ReadOptions Adult = new() { Patient = new Patient(480, Sex.Female), Context = FilmContext.Acute };

    [Fact]
    public void AReadingJudgedFromWrittenProposals_IsTheReadingOfTheFilm()
    {
        using var fixture = new ReaderFixture(passes: PassPlan.Single);
        var film = TestFilms.Limb();
        var proposed = ProposedFilmJson.Read(ProposedFilmJson.Write(fixture.Reader.Propose(film, Adult)));
        var judge = new FilmJudge(new ToolIdentity("tests", "0"), AdequacyLimits.Default);
        var judged = judge.Judge(proposed.Image, proposed.Options, proposed.Proposals, ModelCalibration.None);
        AssertSame(fixture.Reader.Read(film, Adult), judged);
        Assert.Contains(judged.Measurements, m => m.Value is not null);
    }

    [Fact]
    public void WhatAFilmIsRefusedFor_StandsInItsProposalsToo()
    {
        using var fixture = new ReaderFixture(view: "other-joint");
        var proposed = fixture.Reader.Propose(TestFilms.Limb(), Adult);
        var judge = new FilmJudge(new ToolIdentity("tests", "0"), AdequacyLimits.Default);
        var judged = judge.Judge(proposed.Image, proposed.Options, proposed.Proposals, ModelCalibration.None);
        Assert.True(judged.Adequacy.Refused);
        Assert.Empty(judged.Landmarks);
        AssertSame(fixture.Reader.Read(TestFilms.Limb(), Adult), judged);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("nonsense")]
    [InlineData("{\"schema\":\"elbowassist/reading/1\"}")]
    public void WhatHoldsNoProposals_IsSaidInOneSentence(string text) =>
        Assert.DoesNotContain('\n', Assert.Throws<FormatException>(() => ProposedFilmJson.Read(Encoding.UTF8.GetBytes(text))).Message);

    private static void AssertSame(FilmReading expected, FilmReading actual)
    {
        Assert.Equal(expected.View.Name, actual.View.Name);
        Assert.Equal(expected.View.Probabilities, actual.View.Probabilities);
        Assert.Equal(expected.View.ErrorDegrees, actual.View.ErrorDegrees);
        Assert.Equal(expected.Models, actual.Models);
        Assert.Equal(expected.Image, actual.Image);
        Assert.Equal(expected.Adequacy.Checks, actual.Adequacy.Checks);
        Assert.Equal(expected.Landmarks, actual.Landmarks);
        Assert.Equal(expected.Lines, actual.Lines);
        Assert.Equal(expected.Circles, actual.Circles);
        Assert.Equal(expected.Reasons, actual.Reasons);
        Assert.Equal(
            expected.Measurements.Select(m => (m.Name, m.Value, m.Redraw95, m.State, m.Note)),
            actual.Measurements.Select(m => (m.Name, m.Value, m.Redraw95, m.State, m.Note)));
    }
}
