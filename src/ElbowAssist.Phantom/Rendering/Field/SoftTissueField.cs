namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Skin surface, fat layer, fat pads and a cast, in the frame of the humerus.</summary>
internal struct SoftTissueGeometry
{
    public Frame Forearm;
    public Cone UpperArm;
    public Cone Joint;
    public Cone OlecranonCover;
    public Cone ForearmProximal;
    public Cone ForearmDistal;

    /// <summary>Scale of Z of the limb sections (above 1 = narrower across) and width of the blends.</summary>
    public float Oval, Blend;

    /// <summary>Skin and fat layer thickness.</summary>
    public float Skin, FatLayer;

    /// <summary>Share of fat in the planes between muscles.</summary>
    public float Marbling;

    /// <summary>Fat pads: ellipsoids in frames of their own (X along the pad, Y its thickness, Z across).</summary>
    public FatPadGeometry AnteriorPad, PosteriorPad;

    /// <summary>Cast between two distances from the skin; none if the outer is not larger. Covers the half space n·p &lt; offset.</summary>
    public float CastInner, CastOuter, CastOffset, CastMesh;
    public Vec3 CastNormal;
}

/// <summary>A lens of fat: half sizes along its frame; none if 0.</summary>
internal struct FatPadGeometry
{
    public Frame Frame;
    public Vec3 Radii;

    /// <summary>Where a ray enters the lens, relative to its target, and how far it runs inside; false if it passes by.</summary>
    public static bool Chord(in FatPadGeometry pad, Vec3 target, Vec3 direction, out float from, out float length)
    {
        from = length = 0f;
        if (pad.Radii.Y <= 0f)
        {
            return false;
        }

        var o = Frame.ToLocal(in pad.Frame, target);
        var v = Frame.DirectionToLocal(in pad.Frame, direction);
        o = new Vec3(o.X / pad.Radii.X, o.Y / pad.Radii.Y, o.Z / pad.Radii.Z);
        v = new Vec3(v.X / pad.Radii.X, v.Y / pad.Radii.Y, v.Z / pad.Radii.Z);
        float a = v.Dot(v), b = o.Dot(v), c = o.Dot(o) - 1f;
        var root = (b * b) - (a * c);
        if (root <= 0f)
        {
            return false;
        }

        root = MathF.Sqrt(root);
        from = (-b - root) / a;
        length = 2f * root / a;
        return true;
    }
}

internal static class SoftTissueField
{
    /// <summary>Signed distance to the skin.</summary>
    public static float Skin(in SoftTissueGeometry s, Vec3 p)
    {
        var flat = new Vec3(p.X, p.Y, p.Z * s.Oval);
        var q = Frame.ToLocal(in s.Forearm, p);
        var flatArm = new Vec3(q.X, q.Y, q.Z * s.Oval);
        var forearm = Distance.Join(Distance.ToCone(in s.ForearmProximal, flatArm), Distance.ToCone(in s.ForearmDistal, flatArm), 12f);
        var d = Distance.Join(Distance.ToCone(in s.UpperArm, flat), forearm, s.Blend);
        d = Distance.Join(d, Distance.ToCone(in s.Joint, p), 14f);
        return Distance.Join(d, Distance.ToCone(in s.OlecranonCover, q), 14f);
    }
}
