using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>
/// The humerus. Origin in the middle of the flexion axis, X anterior, Y proximal along the shaft, Z lateral (a right
/// elbow); millimetres. Heights are Y.
/// </summary>
internal struct HumerusGeometry
{
    /// <summary>Anterior place of the middle of the section: far up, and extrapolated to height 0.</summary>
    public float ShaftX, DistalX;

    /// <summary>Lateral place of the middle of the section: far up, and extrapolated to height 0.</summary>
    public float ShaftZ, DistalZ;

    /// <summary>Height above which the shaft is straight but for its bow, and the bow there (mm per mm²).</summary>
    public float CurveHeight, Bow;

    /// <summary>Anteroposterior half widths: narrowest, of the shaft, near the joint.</summary>
    public float WaistAp, ShaftAp, DistalAp;

    /// <summary>Heights between which the anteroposterior width goes from narrowest to shaft, and to distal.</summary>
    public float ApShaftFrom, ApShaftTo, ApDistalFrom, ApDistalTo;

    /// <summary>Mediolateral half widths, heights at which the flare begins and ends.</summary>
    public float ShaftMl, DistalMl, FlareTop, FlareBottom;

    /// <summary>Height of the lower end of the blade of bone that carries the joint.</summary>
    public float BladeEnd;

    public TrochleaGeometry Trochlea;
    public Oval Capitellum;
    public Cone MedialEpicondyle;
    public Cone LateralEpicondyle;
    public Oval OlecranonFossa;
    public Oval CoronoidFossa;
    public Oval RadialFossa;

    /// <summary>Cortex near the joint and in the shaft, and the heights between which it changes.</summary>
    public float CortexDistal, CortexShaft, CortexFrom, CortexTo;

    /// <summary>Bone volume fraction of spongy bone near the joint and in the shaft.</summary>
    public float SpongyDistal, SpongyShaft;

    /// <summary>Extra bone just under the joint surfaces.</summary>
    public float Subchondral;

    public HumerusGrowth Growth;
    public BreakGeometry Break;

    /// <summary>Bounding capsules: shaft and joint end.</summary>
    public Cone ShaftBound, JointBound;
}

/// <summary>The trochlea as a surface of revolution about the flexion axis: radii at places along it.</summary>
internal struct TrochleaGeometry
{
    public float MedialLipZ, MedialLipRadius, GrooveZ, GrooveRadius, LateralLipZ, LateralLipRadius, EndZ, EndRadius;

    /// <summary>How far the medial lip reaches beyond its highest ring.</summary>
    public float MedialRim;
}

internal static class HumerusField
{
    /// <summary>Signed distance to the bone, broken or not; outside, never more than the true distance by design.</summary>
    public static float Evaluate(in HumerusGeometry h, Vec3 p)
    {
        if (h.Break.Active == 0)
        {
            return Whole(in h, p);
        }

        var inRest = Frame.ToLocal(in h.Break.Rest, p);
        var inFragment = Frame.ToLocal(in h.Break.Fragment, p);
        return BreakGeometry.Both(
            in h.Break,
            BreakGeometry.OfRest(in h.Break, Whole(in h, inRest), BreakGeometry.Region(in h.Break, inRest, 77u)),
            BreakGeometry.OfFragment(in h.Break, Whole(in h, inFragment), BreakGeometry.Region(in h.Break, inFragment, 77u)));
    }

    /// <summary>Where a point of the broken bone was before the break.</summary>
    public static Vec3 BeforeBreak(in HumerusGeometry h, Vec3 p)
    {
        if (h.Break.Active == 0)
        {
            return p;
        }

        var inRest = Frame.ToLocal(in h.Break.Rest, p);
        return BreakGeometry.OfRest(in h.Break, Whole(in h, inRest), BreakGeometry.Region(in h.Break, inRest, 77u)) < 0.2f
            ? inRest
            : Frame.ToLocal(in h.Break.Fragment, p);
    }

    /// <summary>Signed distance to the unbroken bone.</summary>
    public static float Whole(in HumerusGeometry h, Vec3 p)
    {
        var bound = MathF.Min(Distance.ToCone(in h.ShaftBound, p), Distance.ToCone(in h.JointBound, p));
        return bound > 6f ? bound : HumerusGrowth.Ossified(in h.Growth, p, Surface(in h, p));
    }

    /// <summary>Signed distance without the early answer far from the bone.</summary>
    public static float Surface(in HumerusGeometry h, Vec3 p)
    {
        var d = Shaft(in h, p);
        if (p.Y < 0.48f * h.FlareTop)
        {
            d = Distance.Cut(d, h.BladeEnd - p.Y, 6f);
            d = Distance.Join(d, Trochlea(in h.Trochlea, p, 0f), 3f);
            d = Distance.Join(d, Distance.ToOval(in h.Capitellum, p), 1.5f);
            d = Distance.Join(d, Distance.ToCone(in h.MedialEpicondyle, p), 5f);
            d = Distance.Join(d, Distance.ToCone(in h.LateralEpicondyle, p), 4f);
            d = Distance.Cut(d, -Distance.ToOval(in h.OlecranonFossa, p), 4f);
            d = Distance.Cut(d, -Distance.ToOval(in h.CoronoidFossa, p), 3f);
            d = Distance.Cut(d, -Distance.ToOval(in h.RadialFossa, p), 1.5f);
        }

        return d;
    }

    /// <summary>Middle of the section of the shaft at a height.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 Axis(in HumerusGeometry h, float y)
    {
        var t = MathF.Max(1f - (y / h.CurveHeight), 0f);
        t = MathF.Min(t, 1.25f);
        var up = MathF.Max(y - h.CurveHeight, 0f);
        return new Vec3(
            h.ShaftX + ((h.DistalX - h.ShaftX) * t * t) + (h.Bow * up * up),
            y,
            h.ShaftZ + ((h.DistalZ - h.ShaftZ) * t * t));
    }

    /// <summary>Anteroposterior half width of the section at a height.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float HalfAp(in HumerusGeometry h, float y) =>
        h.WaistAp
        + ((h.ShaftAp - h.WaistAp) * Distance.Step(h.ApShaftFrom, h.ApShaftTo, y))
        + ((h.DistalAp - h.WaistAp) * Distance.Step(h.ApDistalFrom, h.ApDistalTo, y));

    /// <summary>Mediolateral half width of the section at a height.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float HalfMl(in HumerusGeometry h, float y)
    {
        var t = MathF.Max((h.FlareTop - MathF.Max(y, h.FlareBottom)) / (h.FlareTop - h.FlareBottom), 0f);
        var narrow = 1f - (0.38f * Distance.Step(h.FlareBottom, h.BladeEnd, y));
        return (h.ShaftMl + ((h.DistalMl - h.ShaftMl) * t * t)) * narrow;
    }

    /// <summary>The shaft and the blade below it, without joint and fossae.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Shaft(in HumerusGeometry h, Vec3 p)
    {
        var c = Axis(in h, p.Y);
        float a = HalfAp(in h, p.Y), b = HalfMl(in h, p.Y);
        var r = MathF.Min(a, b);
        var x = MathF.Max(MathF.Abs(p.X - c.X) - (a - r), 0f);
        var z = MathF.Max(MathF.Abs(p.Z - c.Z) - (b - r), 0f);
        return 0.94f * (MathF.Sqrt((x * x) + (z * z)) - r);
    }

    /// <summary>Radius of the trochlea at a place along the flexion axis.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float TrochleaRadius(in TrochleaGeometry t, float z) =>
        t.MedialLipRadius
        + ((t.GrooveRadius - t.MedialLipRadius) * Distance.Step(t.MedialLipZ, t.GrooveZ, z))
        + ((t.LateralLipRadius - t.GrooveRadius) * Distance.Step(t.GrooveZ, t.LateralLipZ, z))
        + ((t.EndRadius - t.LateralLipRadius) * Distance.Step(t.LateralLipZ, t.EndZ, z));

    /// <summary>Signed distance to the trochlea grown by an offset.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Trochlea(in TrochleaGeometry t, Vec3 p, float offset)
    {
        var radial = 0.87f * (MathF.Sqrt((p.X * p.X) + (p.Y * p.Y)) - TrochleaRadius(in t, p.Z) - offset);
        var ends = MathF.Max(t.MedialLipZ - t.MedialRim - offset - p.Z, p.Z - t.EndZ - 3f - offset);
        return Distance.Cut(radial, ends, 6f);
    }

    /// <summary>Cortex thickness and bone volume fraction of the spongy bone at a place inside.</summary>
    public static BoneTissue Tissue(in HumerusGeometry h, Vec3 p, float depth, uint seed)
    {
        var up = Distance.Step(h.CortexFrom, h.CortexTo, p.Y);
        var cortex = Distance.Mix(h.CortexDistal, h.CortexShaft, up) * (p.Z < 0f ? 1.12f : 0.92f);
        var spongy = Distance.Mix(h.SpongyDistal, h.SpongyShaft, Distance.Step(h.CortexFrom, h.CortexTo * 0.9f, p.Y));
        if (h.Growth.Stage == 0 && p.Y < 0.6f * h.FlareBottom && depth > 0.6f * cortex)
        {
            var joint = MathF.Abs(Trochlea(in h.Trochlea, p, 0f));
            spongy += h.Subchondral * MathF.Max(1f - (joint * 0.7f), 0f);
        }

        return TissueNoise.Texture(new Vec3(p.Y, p.X, p.Z), depth, cortex, spongy, seed);
    }
}
