using ElbowAssist.Phantom.Rendering.Field;
using static ElbowAssist.Phantom.NearMiss.Regions.Place;
using static ElbowAssist.Phantom.NearMiss.SceneBuilder;

namespace ElbowAssist.Phantom.NearMiss.Regions;

/// <summary>Shafts without a joint, made-up hinges and random assemblies.</summary>
internal static class Shafts
{
    public static RegionFrame Parallel(SceneBuilder b)
    {
        var gap = b.Uniform(16, 34);
        var first = b.Uniform(6, 13);
        var bow = b.Uniform(-12, 12);
        b.LongBone(At(-gap / 2, 180), At((-gap / 2) + bow, -180), 14, first, 12, Z, 1f);
        b.LongBone(At(gap / 2, 180), At(gap / 2, -180), 12, first * b.Uniform(0.45, 1), 12, Z, 1f);
        b.Soft(At(0, 200), b.About(46), At(0, -200), b.About(34));
        return new RegionFrame(At(0, b.Uniform(-70, 70)), b.Uniform(120, 280));
    }

    public static RegionFrame Single(SceneBuilder b)
    {
        var radius = b.Uniform(7, 15);
        b.LongBone(At(0, 220), At(b.Uniform(-15, 15), -220), radius * 2, radius, radius * 1.8f, Z, b.Uniform(1, 1.4));
        b.Soft(At(0, 240), b.Uniform(40, 85), At(0, -240), b.Uniform(35, 70));
        return new RegionFrame(At(b.Uniform(-20, 20), b.Uniform(-90, 90)), b.Uniform(120, 280));
    }

    /// <summary>One bone with one or two knuckles meets one or two blunt bones at any flexion; no olecranon, no round head.</summary>
    public static RegionFrame Hinge(SceneBuilder b)
    {
        var flexion = b.Uniform(0, 130);
        var direction = Heading(180 + flexion);
        var shaft = b.Uniform(7, 13);
        var knuckle = b.Uniform(10, 20);
        b.LongBone(At(0, 220), At(0, knuckle * 0.8), shaft * 1.5f, shaft, shaft * b.Uniform(1, 1.8), Z, 0.9f);
        var half = b.Uniform(6, 24);
        b.ShortBone(
            3,
            Capsule(At(0, 0, -half), knuckle, At(0, 0, half), knuckle * b.Uniform(0.7, 1.1)),
            Carve(Capsule(At(0, -knuckle - 4, 0), b.Uniform(1, 7), At(0, -4, 0), b.Uniform(1, 6))));
        var plateau = direction * (knuckle + b.Uniform(9, 16));
        var isDouble = b.Random.Chance(0.4);
        var lower = b.Uniform(6, 12);
        var offset = isDouble ? Z * b.Uniform(8, 16) : default;
        b.LongBone(plateau - offset, (direction * 230) - offset, lower * b.Uniform(1.5, 2), lower, lower * 1.5f, Z, 0.85f);
        if (isDouble)
        {
            var short2 = direction * (knuckle + b.Uniform(20, 60));
            b.LongBone(short2 + offset, (direction * 230) + offset, lower, lower * b.Uniform(0.4, 0.8), lower, Z, 1f);
        }

        if (b.Random.Chance(0.4))
        {
            b.ShortBone(2, Ball(Heading(60 + (flexion / 2)) * (knuckle + b.Uniform(8, 14)), b.Uniform(6, 14), Heading(60 + (flexion / 2)), 1.7f));
        }

        var girth = b.Uniform(30, 52);
        b.Soft(At(0, 240), girth * 1.15f, default, girth);
        b.Soft(default, girth, direction * 240, girth * b.Uniform(0.7, 1));
        return new RegionFrame((direction * 18) + At(0, 12), b.Uniform(110, 260));
    }

    public static RegionFrame Random(SceneBuilder b)
    {
        var count = 1 + (int)(b.Random.Uniform() * 7);
        for (var i = 0; i < count; i++)
        {
            var from = At(b.Uniform(-70, 70), b.Uniform(-70, 70), b.Uniform(-20, 20));
            if (b.Random.Chance(0.45))
            {
                b.ShortBone(4, Ball(from, b.Uniform(6, 24), Heading(b.Uniform(0, 360)), b.Uniform(1, 2)), Capsule(from, b.Uniform(4, 12), from + (Heading(b.Uniform(0, 360)) * 25), b.Uniform(4, 14)));
            }
            else
            {
                var middle = b.Uniform(3, 13);
                b.LongBone(from, from + (Heading(b.Uniform(0, 360)) * b.Uniform(40, 250)), middle * b.Uniform(1, 2), middle, middle * b.Uniform(1, 2), Z, b.Uniform(0.9, 1.6));
            }
        }

        for (var i = 0; i < 3; i++)
        {
            var heading = Heading(b.Uniform(0, 360));
            b.Soft(default, b.Uniform(25, 60), heading * b.Uniform(60, 220), b.Uniform(20, 60));
        }

        return new RegionFrame(default, b.Uniform(120, 240));
    }
}
