using ElbowAssist.Phantom.Rendering.Field;
using static ElbowAssist.Phantom.NearMiss.Regions.Place;
using static ElbowAssist.Phantom.NearMiss.SceneBuilder;

namespace ElbowAssist.Phantom.NearMiss.Regions;

/// <summary>Knee, ankle and foot.</summary>
internal static class Leg
{
    public static RegionFrame Knee(SceneBuilder b)
    {
        var flexion = b.Random.Chance(0.5) ? b.Uniform(0, 15) : b.Uniform(15, 125);
        var hinge = At(0, 0, -8);
        Vec3 Shin(double x, double y, double z) => Flex(At(x, y, z), hinge, -flexion);
        var condyle = b.About(19);
        var spread = b.About(22);
        b.LongBone(
            At(0, 260), At(0, 16), 20, b.About(13.5), b.About(31), Z, 1.4f, null,
            [
                Ball(At(-spread, 0, -6), condyle, X, 1.5f),
                Ball(At(spread, 0, -6), condyle * 0.96f, X, 1.5f),
                Capsule(At(-14, 8, 2), 16, At(14, 8, 2), 16),
                Carve(Capsule(At(0, -22, -30), 9, At(0, -14, 0), 8)),
            ]);
        if (b.Maturity > 0.3f)
        {
            b.ShortBone(2, Ball(Flex(At(0, b.Uniform(8, 22), 30), hinge, -flexion * 0.5), b.About(19), Z, 1.9f));
        }

        b.LongBone(
            Shin(0, -280, 0), Shin(0, -42, 0), 18, b.About(12), b.About(28), X, 0.9f, null,
            [Capsule(Shin(-25, -33, -4), 11, Shin(25, -33, -4), 11), Capsule(Shin(-7, -30, 0), 5, Shin(-5, -23, 0), 2), Capsule(Shin(7, -30, 0), 5, Shin(5, -22, 0), 2)]);
        b.LongBone(Shin(36, -48, -16), Shin(30, -280, -12), 9, b.About(5.5), 8, X, 1.1f);
        b.Soft(At(0, 280, 0), b.About(74), At(0, 20, 0), b.About(56));
        b.Soft(Shin(0, -10, 0), b.About(54), Shin(0, -100, -14), b.About(54));
        b.Soft(Shin(0, -100, -14), 52, Shin(0, -290, -4), b.About(36));
        return new RegionFrame(At(0, -8, 0), b.Uniform(170, 300));
    }

    public static RegionFrame Ankle(SceneBuilder b)
    {
        HindFoot(b, b.Uniform(-15, 20));
        LowerLeg(b);
        return new RegionFrame(At(0, 12, 8), b.Uniform(130, 240));
    }

    public static RegionFrame Foot(SceneBuilder b)
    {
        HindFoot(b, b.Uniform(-25, 25));
        if (b.Random.Chance(0.5))
        {
            LowerLeg(b);
        }

        for (var ray = 0; ray < 5; ray++)
        {
            var x = -26 + (13 * ray);
            var thick = ray == 0 ? 1.45f : 1f;
            var start = At(x * 0.8, -48, 62 - (3 * Math.Abs(ray - 1)));
            var head = At(x * 1.25, -58, 125 - (6 * Math.Abs(ray - 1)));
            b.LongBone(start, head, 7.5f * thick, b.About(4.2) * thick, 7 * thick, Y, 1f);
            var tip = head;
            for (var phalanx = 0; phalanx < (ray == 0 ? 2 : 3); phalanx++)
            {
                var from = tip + At(0, 0, ray == 0 ? 14 : 9);
                tip = from + At(ray == 0 ? -2 : 1, -1, (ray == 0 ? 22 : 13) / (1 + (0.4 * phalanx)));
                b.LongBone(from, tip, 5 * thick, b.About(3) * thick, 4 * thick, Y, 1f);
            }
        }

        b.Soft(At(0, -40, 50), 42, At(0, -54, 130), 42, Y, 1.7f);
        b.Soft(At(-28, -58, 130), 14, At(-34, -58, 185), 12);
        b.Soft(At(10, -58, 130), 24, At(14, -58, 165), 20, Y, 1.6f);
        return new RegionFrame(At(0, -45, 70), b.Uniform(190, 310));
    }

    private static void LowerLeg(SceneBuilder b)
    {
        b.LongBone(
            At(-4, 210, 0), At(-4, 12, 0), 14, b.About(12), b.About(20), Z, 1.1f, null,
            [Capsule(At(-14, 5, 0), 8, At(10, 5, 0), 8), Capsule(At(-23, 4, 0), 8, At(-25, -12, 0), 5)]);
        b.LongBone(At(24, 210, -12), At(28, -10, -6), 7, b.About(5.5), 10, Z, 1f);
        b.Soft(At(0, 220, -6), b.About(44), At(0, 10, -4), b.About(38));
    }

    private static void HindFoot(SceneBuilder b, double plantarFlexion)
    {
        var hinge = At(0, -4, 0);
        Vec3 Down(double x, double y, double z) => Flex(At(x, y, z), hinge, plantarFlexion);
        b.ShortBone(5, Capsule(Down(-9, -14, 0), 14, Down(9, -14, 0), 14), Capsule(Down(-4, -20, 12), 12, Down(-8, -26, 34), 11));
        b.ShortBone(6, Capsule(Down(2, -44, -34), 17, Down(6, -40, 14), 13), Ball(Down(-6, -36, 8), 11), Ball(Down(2, -40, -42), 16));
        b.ShortBone(2, Ball(Down(-12, -30, 46), 13, Z, 1.8f));
        b.ShortBone(3, Capsule(Down(14, -42, 28), 11, Down(16, -44, 48), 11));
        for (var i = 0; i < 3; i++)
        {
            b.ShortBone(2, Capsule(Down(-22 + (12 * i), -36, 54), 7.5f, Down(-22 + (12 * i), -40, 64), 7.5f));
        }

        b.Soft(Down(0, -10, -10), 38, Down(2, -42, -34), 30);
        b.Soft(Down(0, -20, 10), 38, Down(0, -40, 60), 36, Y, 1.3f);
    }
}
