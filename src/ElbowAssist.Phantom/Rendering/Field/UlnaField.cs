namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>
/// The ulna in the forearm frame: origin in the middle of the flexion axis, X distal along the forearm, Y to the
/// flexor side, Z lateral.
/// </summary>
internal struct UlnaGeometry
{
    public Frame Forearm;
    public Cone Olecranon;
    public Cone Beak;
    public Cone Coronoid;
    public Cone CoronoidSlope;
    public Cone Shaft1;
    public Cone Shaft2;
    public Cone Shaft3;

    /// <summary>Spurs of a worn joint; 1 if there are any.</summary>
    public int HasSpurs;
    public Cone CoronoidSpur, OlecranonSpur;

    /// <summary>The part of the joint end that spreads medially.</summary>
    public Cone MedialFlare;

    /// <summary>Trochlea seen from the forearm, cut out with the joint gap.</summary>
    public TrochleaGeometry Trochlea;
    public float JointGap;

    /// <summary>Cosine and sine of the angle between the forearm and the square to the flexion axis.</summary>
    public float ValgusCos, ValgusSin;

    /// <summary>Middle of the joint end along Z, and how much it is flattened (scale of Z, above 1 = narrower).</summary>
    public float MiddleZ, Flattening;

    /// <summary>The same for the coronoid, a broad ridge.</summary>
    public float CoronoidFlattening;

    /// <summary>Clearance for the radial head: a cylinder along X.</summary>
    public Vec3 RadialNotch;
    public float RadialNotchRadius, RadialNotchHalfLength;

    public float CortexJoint, CortexShaft, CortexFrom, CortexTo;
    public float SpongyJoint, SpongyShaft;
    public UlnaGrowth Growth;
    public BreakGeometry Break;
    public Cone JointBound, ShaftBound;
}

internal static class UlnaField
{
    /// <summary>Signed distance at a point given in the frame of the humerus.</summary>
    public static float Evaluate(in UlnaGeometry u, Vec3 outer) => EvaluateLocal(in u, Frame.ToLocal(in u.Forearm, outer));

    /// <summary>Signed distance at a point given in the forearm frame.</summary>
    public static float EvaluateLocal(in UlnaGeometry u, Vec3 p)
    {
        if (u.Break.Active == 0)
        {
            return Whole(in u, p);
        }

        var inRest = Frame.ToLocal(in u.Break.Rest, p);
        var inFragment = Frame.ToLocal(in u.Break.Fragment, p);
        return MathF.Min(
            BreakGeometry.OfRest(in u.Break, Whole(in u, inRest), BreakGeometry.Region(in u.Break, inRest, 78u)),
            BreakGeometry.OfFragment(in u.Break, Whole(in u, inFragment), BreakGeometry.Region(in u.Break, inFragment, 78u)));
    }

    /// <summary>Signed distance to the unbroken bone at a point given in its frame.</summary>
    public static float Whole(in UlnaGeometry u, Vec3 p)
    {
        var bound = MathF.Min(Distance.ToCone(in u.JointBound, p), Distance.ToCone(in u.ShaftBound, p));
        if (bound > 6f)
        {
            return bound;
        }

        var d = Distance.Join(Distance.ToCone(in u.Shaft1, p), Distance.ToCone(in u.Shaft2, p), 3f);
        d = Distance.Join(d, Distance.ToCone(in u.Shaft3, p), 3f);
        if (p.X < 54f)
        {
            var q = new Vec3(p.X, p.Y, (p.Z - u.MiddleZ) * u.Flattening);
            d = Distance.Join(d, Distance.ToCone(in u.Olecranon, q), 4f);
            d = Distance.Join(d, Distance.ToCone(in u.Beak, q), 3f);
            var ridge = new Vec3(p.X, p.Y, (p.Z - u.MiddleZ) * u.CoronoidFlattening);
            d = Distance.Join(d, Distance.ToCone(in u.Coronoid, ridge), 4f);
            d = Distance.Join(d, Distance.ToCone(in u.CoronoidSlope, q), 5f);
            d = Distance.Join(d, Distance.ToCone(in u.MedialFlare, p), 4f);
            if (u.HasSpurs != 0)
            {
                d = Distance.Join(d, MathF.Min(Distance.ToCone(in u.CoronoidSpur, q), Distance.ToCone(in u.OlecranonSpur, q)), 2f);
            }

            var atJoint = new Vec3((u.ValgusCos * p.X) - (u.ValgusSin * p.Z), p.Y, (u.ValgusSin * p.X) + (u.ValgusCos * p.Z));
            d = Distance.Cut(d, -HumerusField.Trochlea(in u.Trochlea, atJoint, u.JointGap), 1.2f);
            var y = p.Y - u.RadialNotch.Y;
            var z = p.Z - u.RadialNotch.Z;
            var round = MathF.Sqrt((y * y) + (z * z)) - u.RadialNotchRadius;
            var length = MathF.Abs(p.X - u.RadialNotch.X) - u.RadialNotchHalfLength;
            d = Distance.Cut(d, -Distance.Cut(round, length, 2f), 1.5f);
        }

        return UlnaGrowth.Ossified(in u.Growth, p, 0.95f * d);
    }

    /// <summary>Tissue at a point in the forearm frame.</summary>
    public static BoneTissue Tissue(in UlnaGeometry u, Vec3 p, float depth, uint seed)
    {
        var down = Distance.Step(u.CortexFrom, u.CortexTo, p.X);
        var cortex = Distance.Mix(u.CortexJoint, u.CortexShaft, down);
        var spongy = Distance.Mix(u.SpongyJoint, u.SpongyShaft, down);
        return TissueNoise.Texture(p, depth, cortex, spongy, seed + 2u);
    }
}
