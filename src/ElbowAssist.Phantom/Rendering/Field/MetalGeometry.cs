namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Metal in or on the bones, in the frame of the joint: up to six rods and a plate.</summary>
internal struct MetalGeometry
{
    public Cone Rod1, Rod2, Rod3, Rod4, Rod5, Rod6;

    /// <summary>A flat box: half sizes along its frame; none if the first is 0.</summary>
    public Frame Plate;
    public Vec3 PlateHalf;

    /// <summary>Metal along a ray.</summary>
    public static float Path(in MetalGeometry m, Vec3 target, Vec3 direction) =>
        Rod(in m.Rod1, target, direction) + Rod(in m.Rod2, target, direction) + Rod(in m.Rod3, target, direction)
        + Rod(in m.Rod4, target, direction) + Rod(in m.Rod5, target, direction) + Rod(in m.Rod6, target, direction)
        + Box(in m, target, direction);

    /// <summary>Chord of a round rod with flat ends.</summary>
    private static float Rod(in Cone rod, Vec3 target, Vec3 direction)
    {
        if (rod.RadiusFrom <= 0f)
        {
            return 0f;
        }

        var along = rod.To - rod.From;
        var length = along.Length;
        var axis = along * (1f / length);
        var q = target - rod.From;
        var slope = direction.Dot(axis);
        var start = q.Dot(axis);
        var v = direction - (axis * slope);
        var w = q - (axis * start);
        float a = v.Dot(v), b = w.Dot(v), c = w.Dot(w) - (rod.RadiusFrom * rod.RadiusFrom);
        var root = (b * b) - (a * c);
        if (root <= 0f || a < 1e-6f)
        {
            return 0f;
        }

        root = MathF.Sqrt(root);
        float from = (-b - root) / a, to = (-b + root) / a;
        if (MathF.Abs(slope) > 1e-4f)
        {
            float end1 = -start / slope, end2 = (length - start) / slope;
            from = MathF.Max(from, MathF.Min(end1, end2));
            to = MathF.Min(to, MathF.Max(end1, end2));
        }
        else if (start < 0f || start > length)
        {
            return 0f;
        }

        return MathF.Max(to - from, 0f);
    }

    private static float Box(in MetalGeometry m, Vec3 target, Vec3 direction)
    {
        if (m.PlateHalf.X <= 0f)
        {
            return 0f;
        }

        var o = Frame.ToLocal(in m.Plate, target);
        var v = Frame.DirectionToLocal(in m.Plate, direction);
        float from = -1e6f, to = 1e6f;
        Slab(o.X, v.X, m.PlateHalf.X, ref from, ref to);
        Slab(o.Y, v.Y, m.PlateHalf.Y, ref from, ref to);
        Slab(o.Z, v.Z, m.PlateHalf.Z, ref from, ref to);
        return MathF.Max(to - from, 0f);
    }

    private static void Slab(float o, float v, float half, ref float from, ref float to)
    {
        var inverse = 1f / (MathF.Abs(v) < 1e-6f ? 1e-6f : v);
        float a = (-half - o) * inverse, b = (half - o) * inverse;
        from = MathF.Max(from, MathF.Min(a, b));
        to = MathF.Min(to, MathF.Max(a, b));
    }
}
