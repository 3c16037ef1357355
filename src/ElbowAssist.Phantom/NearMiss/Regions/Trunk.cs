using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.Rendering.Field;
using static ElbowAssist.Phantom.NearMiss.Regions.Place;
using static ElbowAssist.Phantom.NearMiss.SceneBuilder;

namespace ElbowAssist.Phantom.NearMiss.Regions;

/// <summary>Hip, pelvis, spine, chest and skull.</summary>
internal static class Trunk
{
    public static RegionFrame Hip(SceneBuilder b)
    {
        HipSide(b, 1);
        b.Soft(At(20, 130, 0), 110, At(30, -220, 0), b.About(82), Z, 1.9f);
        return new RegionFrame(At(20, -20), b.Uniform(180, 280));
    }

    public static RegionFrame Pelvis(SceneBuilder b)
    {
        HipSide(b, 1);
        HipSide(b, -1);
        Vertebrae(b, At(-90, 60, -30), Y, 3, 24);
        b.ShortBone(8, Capsule(At(-90, 50, -40), 26, At(-90, -20, -60), 12, Z, 1.6f));
        b.Soft(At(-90, 150, 0), b.About(120), At(-90, -40, 0), 130, Z, 2.4f);
        b.Soft(At(20, -60, 0), 90, At(30, -260, 0), 75, Z, 1.6f);
        b.Soft(At(-200, -60, 0), 90, At(-210, -260, 0), 75, Z, 1.6f);
        return new RegionFrame(At(-90, 10), b.Uniform(280, 420));
    }

    public static RegionFrame Spine(SceneBuilder b)
    {
        var size = b.Uniform(9, 26);
        Vertebrae(b, At(0, -size * 6, 0), (Y + (X * b.Uniform(-0.25, 0.25))).Unit, 8, size);
        var girth = size < 13 ? 50 : 100;
        b.Soft(At(0, -size * 12, 30), girth, At(0, size * 12, 30), girth, Z, 2f);
        return new RegionFrame(At(0, 0), size * b.Uniform(7, 13));
    }

    public static RegionFrame Chest(SceneBuilder b)
    {
        Vertebrae(b, At(0, -150, -70), Y, 10, 17);
        for (var rib = 0; rib < 9; rib++)
        {
            var y = 120 - (27 * rib);
            var reach = 85 + (7 * Math.Min(rib, 6));
            foreach (var side in new[] { -1, 1 })
            {
                b.ShortBone(
                    3,
                    Capsule(At(side * 18, y, -80), 5, At(side * reach, y - 18, -50), 5),
                    Capsule(At(side * reach, y - 18, -50), 5, At(side * (reach + 6), y - 40, 10), 5),
                    Capsule(At(side * (reach + 6), y - 40, 10), 5, At(side * 55, y - 70, 75), 4));
            }
        }

        b.Solid(NearMissMaterial.Air, 8, Y, 1, 1, 1, 1, Capsule(At(60, 90, 0), 42, At(72, -80, 0), 62));
        b.Solid(NearMissMaterial.Air, 8, Y, 1, 1, 1, 1, Capsule(At(-60, 90, 0), 42, At(-76, -60, 0), 54));
        b.LongBone(At(20, 140, 60), At(140, 158, 20), 10, 6, 10, Z, 1f);
        b.LongBone(At(-20, 140, 60), At(-140, 158, 20), 10, 6, 10, Z, 1f);
        b.Soft(At(0, 110, 0), 130, At(0, -200, 0), 145, Z, 2.1f);
        return new RegionFrame(At(b.Uniform(-60, 60), b.Uniform(-60, 60)), b.Uniform(200, 400));
    }

    public static RegionFrame Skull(SceneBuilder b)
    {
        b.Solid(NearMissMaterial.Bone, 10, Y, 6, 6, 0f, 0f, Ball(At(0, 20, 0), b.About(82), X, 1.15f));
        b.ShortBone(8, Capsule(At(0, -30, 40), 26, At(0, -60, 62), 18));
        b.ShortBone(5, Capsule(At(-38, -50, 0), 9, At(-28, -90, 40), 9), Capsule(At(-28, -90, 40), 9, At(0, -98, 68), 11), Capsule(At(0, -98, 68), 11, At(28, -90, 40), 9), Capsule(At(28, -90, 40), 9, At(38, -50, 0), 9));
        b.Solid(NearMissMaterial.Air, 4, Y, 1, 1, 1, 1, Ball(At(22, -28, 50), 13), Ball(At(-22, -28, 50), 13), Ball(At(0, 12, 72), 11));
        Vertebrae(b, At(0, -160, -22), Y, 5, 10);
        b.Soft(At(0, 20, 0), 92, At(0, -60, 30), 66, X, 1.1f);
        b.Soft(At(0, -80, -10), 58, At(0, -200, -10), 62);
        return new RegionFrame(At(0, -20, 10), b.Uniform(200, 300));
    }

    private static void HipSide(SceneBuilder b, int side)
    {
        // One side stands at x = 0; the other mirrors it about the middle of the pelvis.
        double M(double x) => side > 0 ? x : -180 - x;
        var head = At(M(0), 0, 0);
        var trochanter = At(M(44), -12, -4);
        var turn = side * b.Uniform(-8, 8);
        var shaft = Heading(180 + turn);
        b.LongBone(
            trochanter + (shaft * 280), trochanter + At(side * -4, -6, 0), 20, b.About(14), 19, Z, 1f,
            [Capsule(At(M(8), -2, 0), 14, trochanter, 15), Capsule(trochanter + At(side * 6, 8, 0), 12, trochanter, 16), Ball(trochanter + At(side * -13, -42, -8), 11)],
            [Ball(head, b.About(23))]);
        b.ShortBone(
            8,
            Ball(At(M(-22), 10, 0), 34),
            Capsule(At(M(-20), 30, 0), 18, At(M(30), 110, 10), 9, Z, 2f),
            Capsule(At(M(30), 110, 10), 9, At(M(-50), 95, -40), 10, Z, 1.6f),
            Capsule(At(M(-25), -10, 10), 11, At(M(-84), -40, 40), 8),
            Capsule(At(M(-25), -20, -10), 14, At(M(-45), -75, -10), 12),
            Capsule(At(M(-45), -75, -10), 11, At(M(-84), -48, 36), 7),
            Carve(Ball(At(M(0), 0, 0), 27)));
    }

    private static void Vertebrae(SceneBuilder b, Vec3 from, Vec3 direction, int count, float size)
    {
        var side = direction.Cross(Z).Unit;
        var at = from;
        for (var i = 0; i < count; i++)
        {
            var half = direction * (size * 0.34f);
            b.ShortBone(
                size * 0.15f,
                Capsule(at - half, size * 0.8f, at + half, size * 0.8f, Z, 1.25f),
                Capsule(at + (side * (size * 0.6f)), size * 0.25f, at + (side * (size * 0.7f)) - (Z * size * 1.1f), size * 0.25f),
                Capsule(at - (side * (size * 0.6f)), size * 0.25f, at - (side * (size * 0.7f)) - (Z * size * 1.1f), size * 0.25f),
                Capsule(at - (Z * size * 1.3f), size * 0.25f, at - (Z * size * 2.2f) - (direction * size * 0.4f), size * 0.2f),
                Capsule(at - (side * (size * 1.5f)) - (Z * size), size * 0.2f, at + (side * (size * 1.5f)) - (Z * size), size * 0.2f));
            at += direction * (size * b.About(1.55, 0.04));
            direction = (direction + (Z * b.Uniform(-0.06, 0.06))).Unit;
        }
    }
}
