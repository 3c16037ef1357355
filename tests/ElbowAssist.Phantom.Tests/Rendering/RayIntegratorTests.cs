using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Tests.Rendering;

/// <summary>Chords of bodies whose chords are known.</summary>
public sealed class RayIntegratorTests
{
    [Theory]
    [InlineData(0, 20.0)]
    [InlineData(6, 16.0)]
    [InlineData(8, 12.0)]
    public void BallOfBone_HasTheChordOfABall(double off, double chord)
    {
        // All of the humerus but a ball of radius 10 is declared cartilage.
        var g = InALimb();
        g.Humerus = Bone();
        var paths = RayIntegrator.Trace(in g, (float)off, 0);
        Assert.Equal(chord, paths.Humerus, 0.15);

        // A shell of 2 mm, nothing inside: outer chord less inner chord.
        var inner = off < 8.25 ? 2 * Math.Sqrt((8.25 * 8.25) - (off * off)) : 0;
        Assert.Equal(chord - inner, paths.Bone, 0.8);
        Assert.Equal(0, paths.Ulna + paths.Radius);
    }

    [Fact]
    public void RoundLimb_HasTheChordOfACircle_SplitIntoSkinFatAndMuscle()
    {
        var g = InALimb();
        var paths = RayIntegrator.Trace(in g, 0, 0);
        Assert.Equal(80, paths.Soft + paths.Fat, 0.3);
        Assert.Equal(2 * 5, paths.Fat, 0.3);
        var aside = RayIntegrator.Trace(in g, 24, 0);
        Assert.Equal(2 * 32, aside.Soft + aside.Fat, 0.3);
    }

    [Fact]
    public void Rod_HasTheChordOfACylinder()
    {
        var g = InALimb();
        g.HasMetal = 1;
        g.Metal.Rod1 = Cone.Of(new Vec3(0, -20, 0), 1.5f, new Vec3(0, 20, 0), 1.5f);
        Assert.Equal(3, RayIntegrator.Trace(in g, 0, 0).Metal, 1e-3);
        Assert.Equal(2 * Math.Sqrt(1.25), RayIntegrator.Trace(in g, 1, 0).Metal, 1e-3);
        Assert.Equal(0, RayIntegrator.Trace(in g, 0, 21).Metal);
    }

    [Fact]
    public void Plate_HasItsThickness()
    {
        var g = InALimb();
        g.HasMetal = 1;
        g.Metal.Plate = Frame.Identity;
        g.Metal.PlateHalf = new Vec3(5, 30, 1.25f);
        Assert.Equal(2.5, RayIntegrator.Trace(in g, 2, 3).Metal, 1e-3);
        Assert.Equal(0, RayIntegrator.Trace(in g, 6, 3).Metal);
    }

    private static ElbowGeometry InALimb() => BareLimb.SeenFrom(new Vec3(0, 0, -1e5f));

    private static HumerusGeometry Bone()
    {
        var near = Cone.Of(new Vec3(0, -20, 0), 40, new Vec3(0, 20, 0), 40);
        var nucleus = Nucleus.Of(Frame.Identity, new Vec3(10, 10, 10), -100);
        return new HumerusGeometry
        {
            ShaftBound = near,
            JointBound = near,
            CurveHeight = 80,
            WaistAp = 8,
            ShaftAp = 8,
            DistalAp = 8,
            ApShaftFrom = 45,
            ApShaftTo = 90,
            ApDistalFrom = 33,
            ApDistalTo = 15,
            ShaftMl = 8,
            DistalMl = 8,
            FlareTop = 0,
            FlareBottom = -90,
            CortexDistal = 2,
            CortexShaft = 2,
            CortexFrom = 500,
            CortexTo = 600,
            Growth = new HumerusGrowth
            {
                Stage = 1,
                LateralNormal = new Vec3(0, 1, 0),
                MedialNormal = new Vec3(0, 1, 0),
                LateralOffset = -500,
                MedialOffset = -500,
                Capitellum = nucleus,
            },
        };
    }
}
