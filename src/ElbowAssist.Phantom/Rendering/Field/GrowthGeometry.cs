using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>An ossification centre: an ellipsoid in a frame of its own, flat where X is below a limit; none if its radius is 0.</summary>
internal struct Nucleus
{
    public Frame Frame;
    public Oval Oval;

    /// <summary>Lower limit of X inside the frame.</summary>
    public float Flat;

    public readonly bool Exists => Oval.Radii.X > 0f;

    public static Nucleus Of(Frame frame, Vec3 radii, float flat) => new()
    {
        Frame = frame,
        Oval = Oval.Of(default, radii),
        Flat = flat,
    };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Join(in Nucleus n, Vec3 p, float d) => n.Oval.Radii.X > 0f ? MathF.Min(d, To(in n, p)) : d;

    /// <summary>Signed distance.</summary>
    public static float To(in Nucleus n, Vec3 p)
    {
        var q = Frame.ToLocal(in n.Frame, p);
        return Distance.Cut(Distance.ToOval(in n.Oval, q), n.Flat - q.X, 1.2f);
    }
}

/// <summary>Growth of the distal humerus. Physes are planes; the epiphysis lies where normal·p exceeds the offset.</summary>
internal struct HumerusGrowth
{
    /// <summary>0 closed, 1 separate nuclei, 2 the joint block is one bone with an open physis.</summary>
    public int Stage;

    /// <summary>1 while the physis of the medial epicondyle is open.</summary>
    public int EpicondyleOpen;
    public Vec3 LateralNormal, MedialNormal, EpicondyleNormal;
    public float LateralOffset, MedialOffset, EpicondyleOffset;
    public float Gap;
    public Nucleus Capitellum, Trochlea1, Trochlea2, Trochlea3, MedialEpicondyle, LateralEpicondyle;

    /// <summary>Signed distance to the metaphyseal side of the physis of the joint block; positive in the epiphysis.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Physis(in HumerusGrowth g, Vec3 p) => MathF.Max(
        g.LateralNormal.Dot(p) - g.LateralOffset,
        g.MedialNormal.Dot(p) - g.MedialOffset);

    /// <summary>The ossified part of a bone whose full form has a distance.</summary>
    public static float Ossified(in HumerusGrowth g, Vec3 p, float full)
    {
        var d = full;
        if (g.EpicondyleOpen != 0)
        {
            d = Distance.Cut(d, g.EpicondyleNormal.Dot(p) - g.EpicondyleOffset, 1.5f);
        }

        if (g.Stage != 0)
        {
            var physis = Physis(in g, p);
            var metaphysis = Distance.Cut(d, physis, 1.5f);
            d = g.Stage == 2 ? MathF.Min(metaphysis, Distance.Cut(d, g.Gap - physis, 1.2f)) : metaphysis;
            d = Nucleus.Join(in g.Capitellum, p, d);
            d = Nucleus.Join(in g.Trochlea1, p, d);
            d = Nucleus.Join(in g.Trochlea2, p, d);
            d = Nucleus.Join(in g.Trochlea3, p, d);
            d = Nucleus.Join(in g.LateralEpicondyle, p, d);
        }

        return Nucleus.Join(in g.MedialEpicondyle, p, d);
    }
}

/// <summary>Growth of the proximal ulna.</summary>
internal struct UlnaGrowth
{
    /// <summary>1 while the end of the olecranon is cartilage.</summary>
    public int Open;
    public Vec3 Normal;
    public float Offset;
    public Nucleus First, Second;

    public static float Ossified(in UlnaGrowth g, Vec3 p, float full)
    {
        if (g.Open == 0)
        {
            return full;
        }

        var d = Distance.Cut(full, g.Normal.Dot(p) - g.Offset, 1.5f);
        d = Nucleus.Join(in g.First, p, d);
        return Nucleus.Join(in g.Second, p, d);
    }
}

/// <summary>Growth of the proximal radius: the bone ends at a height, above it lies a disc.</summary>
internal struct RadiusGrowth
{
    public int Open;

    /// <summary>Distance from the articular surface to the metaphysis.</summary>
    public float Metaphysis;

    /// <summary>Disc: middle, half thickness and radius; none if the radius is 0.</summary>
    public float DiscMiddle, DiscHalf, DiscRadius;

    public static float Ossified(in RadiusGrowth g, Vec3 p, float full)
    {
        if (g.Open == 0)
        {
            return full;
        }

        var d = Distance.Cut(full, g.Metaphysis - p.X, 1.2f);
        return g.DiscRadius > 0f ? MathF.Min(d, Disc(in g, p)) : d;
    }

    public static float Disc(in RadiusGrowth g, Vec3 p)
    {
        var round = MathF.Sqrt((p.Y * p.Y) + (p.Z * p.Z)) - g.DiscRadius;
        return Distance.Cut(round, MathF.Abs(p.X - g.DiscMiddle) - g.DiscHalf, 1.6f);
    }
}
