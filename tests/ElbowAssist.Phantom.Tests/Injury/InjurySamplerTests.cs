using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Injury;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom.Tests.Injury;

public sealed class InjurySamplerTests
{
    public static TheoryData<InjuryKind> Kinds => [.. Enum.GetValues<InjuryKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void EveryKind_HasACodeAndComesInDegrees(InjuryKind kind)
    {
        Assert.Equal(kind, InjuryCodes.Parse(InjuryCodes.Of(kind)));
        var drawn = Enumerable.Range(0, 12)
            .Select(seed => Simulation.Sample((ulong)seed, new SimulationOptions { Injuries = [kind] }).Injury!)
            .ToList();
        Assert.All(drawn, injury => Assert.Equal(kind, injury.Kind));
        Assert.True(drawn.Distinct().Count() > 10);
    }

    /// <summary>An old supracondylar break left in varus turns the forearm in by as much as it is out of line.</summary>
    [Fact]
    public void OldSupracondylarBreak_ChangesTheCarryingAngleByItsVarus()
    {
        var straight = Simulation.Sample(6, new SimulationOptions { FromAgeYears = 20, ToAgeYears = 50, InjuredShare = 0 });
        var old = straight with { Injury = new ElbowInjury(InjuryKind.OldSupracondylar) { CoronalDegrees = -15, Level = 0.5 } };
        var before = NeutralValues.Of(straight, View.Ap, Adequacy.Good)["carrying-angle"];
        var after = NeutralValues.Of(old, View.Ap, Adequacy.Good)["carrying-angle"];
        Assert.Equal(before - 15, after, 1.5);
    }

    /// <summary>A healed break leaves no crack: bone runs through where the shaft was broken.</summary>
    [Fact]
    public void OldSupracondylarBreak_HasNoCrack()
    {
        var adult = Simulation.Sample(6, new SimulationOptions { FromAgeYears = 20, ToAgeYears = 50, InjuredShare = 0 });
        Assert.True(Cracks(InjuryKind.OldSupracondylar) == 0);
        Assert.True(Cracks(InjuryKind.SupracondylarExtension) > 0);

        int Cracks(InjuryKind kind)
        {
            var broken = adult with { Injury = new ElbowInjury(kind) { CoronalDegrees = -12, AngleDegrees = 2, Level = 0.5, Gap = 1 } };
            var options = new SimulationOptions { Adequacy = Adequacy.Good };
            var g = FilmSetup.OfFilm(broken, View.Ap, 64, options).Geometry;
            var column = g.Humerus.Capitellum.Centre.Z;
            var cracks = 0;
            var inside = false;
            for (var y = 40f; y > 0; y -= 0.1f)
            {
                var now = Phantom.Rendering.Field.HumerusField.Evaluate(in g.Humerus, new(-6, y, 0.75f * column)) < 0;
                cracks += inside && !now ? 1 : 0;
                inside = now;
            }

            return cracks;
        }
    }
}
