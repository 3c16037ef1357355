namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>
/// The radius in its own frame: origin in the middle of the rim of the head, X distal along the neck, Y and Z across
/// (flexor side and lateral when the forearm is supinated).
/// </summary>
internal struct RadiusGeometry
{
    public Frame Bone;

    /// <summary>Half diameters of the head along Y and Z, its height, how much it narrows towards the neck.</summary>
    public float HeadY, HeadZ, HeadHeight, HeadTaper, HeadRounding;

    /// <summary>The dish: a sphere of this radius whose middle lies this far above the rim.</summary>
    public float DishRadius, DishAbove;
    public Cone Neck;
    public Cone Shaft1;
    public Cone Shaft2;
    public Oval Tuberosity;
    public float CortexJoint, CortexShaft, CortexFrom, CortexTo;
    public float SpongyJoint, SpongyShaft;
    public RadiusGrowth Growth;
    public BreakGeometry Break;
    public Cone Bound1, Bound2;
}

internal static class RadiusField
{
    /// <summary>Signed distance at a point given in the frame of the humerus.</summary>
    public static float Evaluate(in RadiusGeometry r, Vec3 outer) => EvaluateLocal(in r, Frame.ToLocal(in r.Bone, outer));

    /// <summary>Signed distance at a point given in the frame of the radius.</summary>
    public static float EvaluateLocal(in RadiusGeometry r, Vec3 p)
    {
        if (r.Break.Active == 0)
        {
            return Whole(in r, p);
        }

        var inRest = Frame.ToLocal(in r.Break.Rest, p);
        var inFragment = Frame.ToLocal(in r.Break.Fragment, p);
        return MathF.Min(
            BreakGeometry.OfRest(in r.Break, Whole(in r, inRest), BreakGeometry.Region(in r.Break, inRest, 79u)),
            BreakGeometry.OfFragment(in r.Break, Whole(in r, inFragment), BreakGeometry.Region(in r.Break, inFragment, 79u)));
    }

    /// <summary>Signed distance to the unbroken bone at a point given in its frame.</summary>
    public static float Whole(in RadiusGeometry r, Vec3 p)
    {
        var bound = MathF.Min(Distance.ToCone(in r.Bound1, p), Distance.ToCone(in r.Bound2, p));
        if (bound > 6f)
        {
            return bound;
        }

        var d = Distance.Join(Distance.ToCone(in r.Shaft1, p), Distance.ToCone(in r.Shaft2, p), 4f);
        d = Distance.Join(d, Distance.ToOval(in r.Tuberosity, p), 5f);
        if (p.X < 40f)
        {
            d = Distance.Join(d, Distance.ToCone(in r.Neck, p), 3f);
            d = Distance.Join(d, Head(in r, p), 7f);
            d = Distance.Cut(d, r.DishRadius - new Vec3(p.X + r.DishAbove, p.Y, p.Z).Length, 1.2f);
        }

        return RadiusGrowth.Ossified(in r.Growth, p, 0.95f * d);
    }

    /// <summary>The head without its dish.</summary>
    public static float Head(in RadiusGeometry r, Vec3 p)
    {
        var narrow = 1f - (r.HeadTaper * Distance.Step(0.35f * r.HeadHeight, r.HeadHeight, p.X));
        float y = p.Y / (r.HeadY * narrow), z = p.Z / (r.HeadZ * narrow);
        var round = (MathF.Sqrt((y * y) + (z * z)) - 1f) * r.HeadZ * narrow * 0.95f;
        return Distance.Cut(round, MathF.Max(-p.X, p.X - r.HeadHeight), r.HeadRounding);
    }

    /// <summary>Tissue at a point in the frame of the radius.</summary>
    public static BoneTissue Tissue(in RadiusGeometry r, Vec3 p, float depth, uint seed)
    {
        var down = Distance.Step(r.CortexFrom, r.CortexTo, p.X);
        var cortex = Distance.Mix(r.CortexJoint, r.CortexShaft, down);
        var spongy = Distance.Mix(r.SpongyJoint, r.SpongyShaft, down);
        return TissueNoise.Texture(p, depth, cortex, spongy, seed + 4u);
    }
}
