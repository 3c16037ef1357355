using ElbowAssist.Phantom.Rendering.Field;
using static ElbowAssist.Phantom.NearMiss.Regions.Place;
using static ElbowAssist.Phantom.NearMiss.SceneBuilder;

namespace ElbowAssist.Phantom.NearMiss.Regions;

/// <summary>Hand, wrist, digits and shoulder.</summary>
internal static class Arm
{
    private static readonly (double X, double Y, double Radius)[] Carpus =
    [
        (13, 8, 8), (2, 10, 7.5), (-9, 8, 7), (-14, 9, 5), (14, 24, 8), (8, 23, 5.5), (-1, 25, 9.5), (-12, 23, 8),
    ];

    public static RegionFrame Wrist(SceneBuilder b)
    {
        Forearm(b);
        HandBones(b, fingers: false);
        return new RegionFrame(At(0, 0), b.Uniform(90, 170));
    }

    public static RegionFrame Hand(SceneBuilder b)
    {
        Forearm(b);
        HandBones(b, fingers: true);
        return new RegionFrame(At(0, b.Uniform(40, 90)), b.Uniform(150, 260));
    }

    /// <summary>Two phalanges or three with their joints, flexed at will, enlarged as in a close-up.</summary>
    public static RegionFrame Digit(SceneBuilder b)
    {
        var at = At(0, 40);
        var heading = 180.0;
        b.Soft(At(0, 62), 11, at, 10);
        var count = b.Random.Chance(0.5) ? 3 : 2;
        b.LongBone(At(0, 85), at, 8, b.About(5), b.About(7.5), Z, 1.15f);
        for (var i = 0; i < count; i++)
        {
            heading += b.Uniform(0, b.Random.Chance(0.5) ? 20 : 75);
            var from = at + (Heading(heading) * b.Uniform(12, 15));
            at = from + (Heading(heading) * b.Uniform(16, 32));
            b.LongBone(from, at, b.About(6.5), b.About(3.8), b.About(5), Z, 1.2f);
            b.Soft(from, b.About(9), at, b.About(8));
        }

        return new RegionFrame(At(0, 22), b.Uniform(60, 110));
    }

    public static RegionFrame Shoulder(SceneBuilder b)
    {
        var abduction = b.Uniform(5, 70);
        var shaft = Heading(180 - abduction);
        var head = At(0, 0);
        b.LongBone(
            head + (shaft * 260), head + (shaft * 16), 20, b.About(11.5), b.About(20), Z, 1f, null,
            [Ball(head + At(-5, 5), b.About(23)), Ball(head + At(13, -3), 15)]);
        b.ShortBone(4, Capsule(At(-27, -2, -6), 11, At(-34, -14, -8), 11, X, 1.6f), Capsule(At(-34, -8, -10), 9, At(-75, -40, -26), 4, Z, 2f));
        b.ShortBone(2, Capsule(At(-40, -10, -18), 5, At(-90, 30, -30), 3), Capsule(At(-40, -20, -18), 6, At(-70, -110, -34), 3));
        b.ShortBone(3, Capsule(At(-80, 26, -30), 5, At(-10, 40, -22), 7), Capsule(At(-10, 40, -22), 7, At(8, 32, 4), 7));
        b.LongBone(At(-14, 40, 4), At(-130, 48, 30), 9, b.About(6), 9, Z, 1f);
        for (var rib = 0; rib < 5; rib++)
        {
            var y = 20 - (28 * rib);
            b.ShortBone(2, Capsule(At(-120, y + 8, -30), 4.5f, At(-80 - (2 * rib), y - 22, 0), 4.5f), Capsule(At(-80 - (2 * rib), y - 22, 0), 4.5f, At(-130, y - 50, 40), 4.5f));
        }

        b.Solid(Rendering.NearMissMaterial.Air, 5, Y, 1, 1, 1, 1, Capsule(At(-135, -20, 0), 45, At(-140, -130, 0), 48));
        b.Soft(At(-100, -10, 0), 76, At(-110, -160, 0), 90, Z, 1.7f);
        b.Soft(At(0, 0, 0), b.About(52), head + (shaft * 260), b.About(44));
        b.Soft(At(-20, 30, 0), 40, At(-120, 50, 0), 40);
        return new RegionFrame(At(-28, -20), b.Uniform(190, 300));
    }

    private static void Forearm(SceneBuilder b)
    {
        b.LongBone(At(10, -4), At(12, -200), b.About(14), b.About(7), 9, Z, 1.35f);
        b.LongBone(At(-15, -6), At(-14, -200), b.About(8), b.About(6), 9, Z, 1f);
        b.Soft(At(0, -210), b.About(38), At(0, -40), b.About(28), Z, 1.25f);
        b.Soft(At(0, -40), 29, At(0, 15), b.About(29), Z, 1.5f);
    }

    private static void HandBones(SceneBuilder b, bool fingers)
    {
        foreach (var (x, y, radius) in Carpus)
        {
            if (b.Random.Chance(b.Maturity * 1.5))
            {
                var size = (float)radius * (0.45f + (0.55f * MathF.Min(1, b.Maturity)));
                b.ShortBone(1.5f, Capsule(At(x, y - 1, 2 * Math.Sin(x)), size, At(x + b.Uniform(-3, 3), y + 2, b.Uniform(-4, 4)), size * 0.9f));
            }
        }

        var curl = b.Random.Chance(0.7) ? b.Uniform(0, 12) : b.Uniform(12, 70);
        var fan = b.Uniform(0.2, 1.2);
        for (var ray = 0; ray < 5; ray++)
        {
            var isThumb = ray == 0;
            var direction = Heading(isThumb ? b.Uniform(25, 55) : fan * (9 - (7 * ray) + 6));
            var root = isThumb ? At(21, 28, 8) : At(17 - (8.5 * ray) + 3, 35, 0);
            var knuckle = root + (direction * b.About(isThumb ? 42 : 60 - (3 * ray)));
            b.LongBone(root, knuckle, 7, b.About(4), 7.5f, Z, 1.1f);
            b.Soft(root, 16, knuckle, 12);
            var tip = knuckle;
            for (var phalanx = 0; fingers && phalanx < (isThumb ? 2 : 3); phalanx++)
            {
                var bent = Flex(direction, default, -curl * (phalanx + 1));
                var from = tip + (bent * b.Uniform(10, 12.5));
                tip = from + (bent * b.About((isThumb ? 28 : 36) / (1 + (0.5 * phalanx))));
                b.LongBone(from, tip, 6, b.About(3.5), 4.5f, Z, 1.2f);
                b.Soft(from, 9.5f, tip, 8);
            }
        }

        b.Soft(At(0, 30), 32, At(0, 80), 40, Z, 2.6f);
    }
}
