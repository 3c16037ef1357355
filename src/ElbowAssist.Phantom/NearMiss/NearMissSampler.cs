using ElbowAssist.Phantom.NearMiss.Regions;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.NearMiss;

/// <summary>Draws near-miss scenes: region, size, growth, view, soft tissue, cast, metal and framing.</summary>
internal static class NearMissSampler
{
    private const ulong Stream = 0x4E4D;

    private static readonly (BodyRegion Region, double Share)[] Shares =
    [
        (BodyRegion.Knee, 0.16), (BodyRegion.Ankle, 0.09), (BodyRegion.Foot, 0.07), (BodyRegion.Hand, 0.08), (BodyRegion.Wrist, 0.09),
        (BodyRegion.Digit, 0.05), (BodyRegion.ParallelShafts, 0.06), (BodyRegion.SingleShaft, 0.04), (BodyRegion.Shoulder, 0.08),
        (BodyRegion.Hip, 0.09), (BodyRegion.Pelvis, 0.03), (BodyRegion.Spine, 0.04), (BodyRegion.Chest, 0.03), (BodyRegion.Skull, 0.02),
        (BodyRegion.Hinge, 0.05), (BodyRegion.Random, 0.02),
    ];

    /// <summary>Draws a region by its share.</summary>
    public static BodyRegion DrawRegion(CounterRandom random)
    {
        var u = random.Uniform();
        foreach (var (region, share) in Shares)
        {
            u -= share;
            if (u < 0)
            {
                return region;
            }
        }

        return BodyRegion.Hinge;
    }

    /// <summary>The scene of a seed on a square film.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="size">Pixels on a side.</param>
    /// <param name="region">Region, or null to draw one.</param>
    public static (NearMissModel Model, BodyRegion Region, float PixelMm) Sample(ulong seed, int size, BodyRegion? region = null)
    {
        var random = new CounterRandom(seed, Stream);
        var drawn = DrawRegion(random);
        var chosen = region ?? drawn;
        var maturity = random.Chance(0.4) ? (float)random.Uniform(0.12, 0.97) : 1f;
        var builder = new SceneBuilder(random, maturity);
        var frame = Build(chosen, builder);
        if (random.Chance(0.08))
        {
            Metal(builder, frame);
        }

        var scale = (0.5f + (0.5f * maturity)) * (float)random.Uniform(0.88, 1.1);
        var (solids, parts, softFirst) = builder.Finish(scale);
        var field = frame.FieldMm * scale;
        var pixelMm = field / size;
        var hasCast = random.Chance(0.06);
        var inner = (float)random.Uniform(2, 7);
        var scene = new NearMissScene
        {
            Camera = Camera(random, chosen, frame.Centre * scale, pixelMm, size),
            SoftFirst = softFirst,
            SoftCount = parts.Length - softFirst,
            SoftJoin = (float)random.Uniform(8, 22) * scale,
            SolidCount = solids.Length,
            Skin = (float)random.Uniform(1.2, 1.8),
            FatLayer = (float)random.Uniform(1.5, 9) * scale,
            Marbling = (float)random.Uniform(0, 0.5),
            Grain = new Vec3(0.07f, 0.02f, 0.07f),
            CastInner = hasCast ? inner : 0f,
            CastOuter = hasCast ? inner + (float)random.Uniform(2, 7) : 0f,
            NoiseSeed = (uint)random.NextBits(),
        };
        return (new NearMissModel(scene, solids, parts), chosen, pixelMm);
    }

    private static RegionFrame Build(BodyRegion region, SceneBuilder builder) => region switch
    {
        BodyRegion.Knee => Leg.Knee(builder),
        BodyRegion.Ankle => Leg.Ankle(builder),
        BodyRegion.Foot => Leg.Foot(builder),
        BodyRegion.Hand => Arm.Hand(builder),
        BodyRegion.Wrist => Arm.Wrist(builder),
        BodyRegion.Digit => Arm.Digit(builder),
        BodyRegion.ParallelShafts => Shafts.Parallel(builder),
        BodyRegion.SingleShaft => Shafts.Single(builder),
        BodyRegion.Shoulder => Arm.Shoulder(builder),
        BodyRegion.Hip => Trunk.Hip(builder),
        BodyRegion.Pelvis => Trunk.Pelvis(builder),
        BodyRegion.Spine => Trunk.Spine(builder),
        BodyRegion.Chest => Trunk.Chest(builder),
        BodyRegion.Skull => Trunk.Skull(builder),
        BodyRegion.Hinge => Shafts.Hinge(builder),
        _ => Shafts.Random(builder),
    };

    /// <summary>A plate with screws, or pins, across the middle of the field.</summary>
    private static void Metal(SceneBuilder builder, RegionFrame frame)
    {
        var heading = Place.Heading(builder.Uniform(-40, 40));
        var across = heading.Cross(Place.Z);
        var middle = frame.Centre + (across * builder.Uniform(-10, 10));
        var half = heading * builder.Uniform(15, 60);
        var isPin = builder.Random.Chance(0.4);
        var radius = isPin ? builder.Uniform(0.6, 1.2) : builder.Uniform(4, 6);
        builder.Solid(
            NearMissMaterial.Metal, 0.5f, heading, 1, 1, 1, 1,
            SceneBuilder.Capsule(middle - half, radius, middle + half, radius, across, isPin ? 1f : 2.8f));
        for (var i = -1; i <= 1 && !isPin; i++)
        {
            var at = middle + (half * (0.7f * i));
            builder.Solid(
                NearMissMaterial.Metal, 0.5f, across, 1, 1, 1, 1,
                SceneBuilder.Capsule(at, 1.7f, at + (across * builder.Uniform(14, 34)), 1.5f));
        }
    }

    private static CameraGeometry Camera(CounterRandom random, BodyRegion region, Vec3 centre, float pixelMm, int size)
    {
        const float sourceMm = 1050;
        var turn = region is BodyRegion.Digit or BodyRegion.Hinge || random.Chance(0.2)
            ? random.Uniform(0, 360)
            : (90 * (int)(random.Uniform() * 4)) + random.Normal(0, 12);
        var tilt = random.Normal(0, 9);
        var roll = random.Chance(0.6) ? (90 * (int)(random.Uniform() * 4)) + random.Normal(0, 8) : random.Uniform(0, 360);
        var frame = region == BodyRegion.Hinge && random.Chance(0.75)
            ? Rotation(random.Normal(0, 15), tilt, roll)
            : Rotation(turn, tilt, roll);
        var shift = size * pixelMm * 0.12f;
        centre += (frame.Right * (float)random.Normal(0, shift)) + (frame.Down * (float)random.Normal(0, shift));
        return new CameraGeometry
        {
            Source = centre + (frame.Towards * sourceMm),
            Corner = centre - (frame.Right * (size * pixelMm / 2)) - (frame.Down * (size * pixelMm / 2)),
            StepX = frame.Right * pixelMm,
            StepY = frame.Down * pixelMm,
            HalfDepth = 190,
        };
    }

    /// <summary>Axes of the film after turning about Y, tilting about the film's right and rolling in the film.</summary>
    private static (Vec3 Right, Vec3 Down, Vec3 Towards) Rotation(double turn, double tilt, double roll)
    {
        var (st, ct) = Math.SinCos(turn * Math.PI / 180);
        var (si, ci) = Math.SinCos(tilt * Math.PI / 180);
        var (sr, cr) = Math.SinCos(roll * Math.PI / 180);
        var right = Place.At(ct, 0, -st);
        var towards = Place.At(st * ci, si, ct * ci);
        var down = right.Cross(towards);
        return ((right * (float)cr) + (down * (float)sr), (down * (float)cr) - (right * (float)sr), towards);
    }
}
