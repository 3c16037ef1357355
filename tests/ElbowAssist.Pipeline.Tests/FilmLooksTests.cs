using ElbowAssist.Anatomy;
using ElbowAssist.Pipeline.Proposals;

namespace ElbowAssist.Pipeline.Tests;

/// <summary>A film shown to several readers is to each what it would be alone.</summary>
public sealed class FilmLooksTests
{
    private static readonly ReadOptions Adult = new() { Patient = new Patient(480, Sex.Female) };

    [Fact]
    public void ReadersThatShareLooks_SayWhatTheySayAlone()
    {
        using var first = new ReaderFixture(passes: PassPlan.Default);
        using var alike = new ReaderFixture(passes: PassPlan.Default);
        using var other = new ReaderFixture(view: "other-joint", passes: PassPlan.Default);
        var film = TestFilms.Limb();
        using var looks = new FilmLooks(film);
        foreach (var fixture in new[] { first, alike, other, first })
        {
            var (proposed, reading) = fixture.Reader.ReadWithProposals(looks, Adult);
            Assert.Equal(ProposedFilmJson.Write(fixture.Reader.Propose(film, Adult)), ProposedFilmJson.Write(proposed));
            Assert.Equal(fixture.Reader.Read(film, Adult).Adequacy.Refused, reading.Adequacy.Refused);
            Assert.All(["normalise", "quality", "view"], stage => Assert.True(reading.Timing.ContainsKey(stage), stage));
        }
    }

    [Fact]
    public void TheSameViewModel_IsAskedOnce()
    {
        using var first = new ReaderFixture(passes: PassPlan.Default);
        using var alike = new ReaderFixture(passes: PassPlan.Default);
        using var other = new ReaderFixture(view: "other-joint", passes: PassPlan.Default);
        using var looks = new FilmLooks(TestFilms.Limb());
        double View(ReaderFixture fixture) => fixture.Reader.ReadWithProposals(looks, Adult).Reading.Timing["view"];
        var took = View(first);
        Assert.Equal(took, View(alike));
        Assert.NotEqual(took, View(other));
    }
}
