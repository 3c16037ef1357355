using ElbowAssist.Phantom.Mesh.Rendering;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Tests.Rendering;

namespace ElbowAssist.Phantom.Tests.Mesh;

/// <summary>Rays through meshes of known chords, in the humerus's place.</summary>
public sealed class MeshChordTests
{
    private static readonly Lazy<MeshBones> BallBones = new(() => Bones(Bodies.Ball(10, 60)));

    [Theory]
    [InlineData(0, 20.0)]
    [InlineData(6, 16.0)]
    [InlineData(8, 12.0)]
    [InlineData(9.6, 5.6)]
    [InlineData(10.1, 0.0)]
    public void ABall_HasTheChordOfABall_AndAShellOfItsCortex(double off, double chord)
    {
        var g = InALimb(new Vec3(0, 0, -1e5f));
        var paths = MeshIntegrator.Trace(in g, BallBones.Value, (float)off, 0);
        Assert.Equal(chord, paths.Humerus, 0.1);

        // A shell of 2 mm that fades over its inner quarter, nothing inside: outer chord less that of the marrow.
        var marrow = off < 8.25 ? 2 * Math.Sqrt((8.25 * 8.25) - (off * off)) : 0;
        Assert.Equal(chord - marrow, paths.Bone, 0.8);
        Assert.Equal(0, paths.Ulna + paths.Radius);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(35)]
    public void ABox_HasTheChordOfASlab_AlsoAslant(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var g = InALimb(new Vec3((float)(-1e5 * sin), 0, (float)(-1e5 * cos)));
        var bones = Bones(TriangleMesh.Weld(Bodies.Box(new Vec3(-15, -15, -6), new Vec3(15, 15, 6))));
        Assert.Equal(12 / cos, MeshIntegrator.Trace(in g, bones, 0, 0).Humerus, 0.1);
    }

    private static MeshBones Bones(TriangleMesh humerus)
    {
        var away = Bodies.Ball(1, 8).Moved(p => p + new Vec3(0, 0, 4000));
        return new MeshBones(humerus, away, away, Simulation.Sample(1, new SimulationOptions { FromAgeYears = 30 }).Shape);
    }

    private static ElbowGeometry InALimb(Vec3 source)
    {
        var g = BareLimb.SeenFrom(source);
        g.Humerus = new HumerusGeometry { CortexDistal = 2, CortexShaft = 2, CortexFrom = 500, CortexTo = 600 };
        return g;
    }
}
