using CsCheck;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Tests.Mesh;

/// <summary>Distances to bodies for which there is a formula.</summary>
public sealed class DistanceGridTests
{
    private const float Step = 0.5f;

    private static readonly Gen<Vec3> Near = Gen.Select(Gen.Float[-14, 14], Gen.Float[-14, 14], Gen.Float[-14, 14], (x, y, z) => new Vec3(x, y, z));

    [Fact]
    public void ABall_HasTheDistancesOfABall()
    {
        const float radius = 10;
        var grid = DistanceGridBuilder.Build(Bodies.Ball(radius, 60), Step, 4);

        // The facets lie up to r(1 − cos 1.5°) = 0.004 mm inside; far from the surface sweeping is of first order.
        Near.Where(p => p.Length > 0.5f && p.Length < 13.5f).Sample(p =>
        {
            var truth = p.Length - radius;
            Assert.Equal(truth, grid.At(p), 0.03 + (0.07 * Math.Max(Math.Abs(truth) - 1, 0)));
        });
    }

    [Fact]
    public void ABox_HasTheDistancesOfABox_EdgesAndCornersIncluded()
    {
        var half = new Vec3(6, 4.2f, 8.1f);
        var grid = DistanceGridBuilder.Build(TriangleMesh.Weld(Bodies.Box(-half, half)), Step, 4);
        Near.Where(p => MathF.Abs(p.X) < 9 && MathF.Abs(p.Y) < 7 && MathF.Abs(p.Z) < 11).Sample(p =>
        {
            Vec3 q = new(MathF.Abs(p.X) - half.X, MathF.Abs(p.Y) - half.Y, MathF.Abs(p.Z) - half.Z);
            var outside = new Vec3(MathF.Max(q.X, 0), MathF.Max(q.Y, 0), MathF.Max(q.Z, 0)).Length;
            var truth = outside + MathF.Min(MathF.Max(q.X, MathF.Max(q.Y, q.Z)), 0);

            // Between nodes an edge or corner is cut by at most its distance from the nodes around it; far in, sweeping errs.
            Assert.Equal(truth, grid.At(p), MathF.Abs(truth) < 1 ? 0.3 : 0.45);
            Assert.True(MathF.Abs(truth) < 0.3f || (grid.At(p) < 0) == (truth < 0));
        });
    }

    [Fact]
    public void BeyondTheGrid_TheDistanceIsNeverTooLarge()
    {
        var grid = DistanceGridBuilder.Build(Bodies.Ball(5, 30), Step, 3);
        Gen.Select(Near, Gen.Float[1, 6], (p, far) => p * far).Where(p => p.Length > 8).Sample(p =>
            Assert.InRange(grid.At(p), 0, p.Length - 5 + 0.2f));
    }

    [Fact]
    public void TheMirrorImage_HasTheMirroredDistances()
    {
        var box = TriangleMesh.Weld(Bodies.Box(new Vec3(1, -3, -2), new Vec3(7, 5, 4)));
        var grid = DistanceGridBuilder.Build(box, Step, 3);
        var mirrored = DistanceGridBuilder.Build(box.Mirrored(), Step, 3);
        Assert.Equal(box.Volume(), box.Mirrored().Volume(), 3);
        Near.Sample(p => Assert.Equal(grid.At(p), mirrored.At(new Vec3(-p.X, p.Y, p.Z)), 0.3));
    }

    [Fact]
    public void AWaist_IsFoundAtItsHeight()
    {
        // Two boxes one above the other, 6 and 4 mm from front to back.
        List<Vec3> soup = [.. Bodies.Box(new Vec3(-3, 0, -2), new Vec3(3, 10, 2)), .. Bodies.Box(new Vec3(-2, 10, -2), new Vec3(2, 20, 2))];
        var mesh = TriangleMesh.Weld(soup);
        Assert.Equal(4, ShaftWidth.Smallest(mesh, 2, 18)!.Value, 1e-4);
        Assert.Equal(6, ShaftWidth.Smallest(mesh, 2, 8)!.Value, 1e-4);
        Assert.Null(ShaftWidth.Smallest(mesh, 30, 40));
    }
}
