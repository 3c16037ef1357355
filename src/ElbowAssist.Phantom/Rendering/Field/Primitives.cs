using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>An ellipsoid with axes along its frame.</summary>
internal struct Oval
{
    public Vec3 Centre;
    public Vec3 Radii;

    /// <summary>1 / radius; kept because divisions are dear on every step of every ray.</summary>
    public Vec3 Inverse;

    public static Oval Of(Vec3 centre, Vec3 radii) => new()
    {
        Centre = centre,
        Radii = radii,
        Inverse = new Vec3(1 / radii.X, 1 / radii.Y, 1 / radii.Z),
    };
}

/// <summary>A capsule whose radius changes linearly from one end to the other.</summary>
internal struct Cone
{
    public Vec3 From;
    public Vec3 To;
    public float RadiusFrom;
    public float RadiusTo;

    /// <summary>1 / squared length.</summary>
    public float InverseSquare;

    public static Cone Of(Vec3 from, float radiusFrom, Vec3 to, float radiusTo) => new()
    {
        From = from,
        To = to,
        RadiusFrom = radiusFrom,
        RadiusTo = radiusTo,
        InverseSquare = 1 / (to - from).Dot(to - from),
    };
}

/// <summary>Signed distances (negative inside, millimetres) and their blends.</summary>
internal static class Distance
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Clamp(float x, float from, float to) => MathF.Min(MathF.Max(x, from), to);

    /// <summary>Cubic step: 0 below <paramref name="from"/>, 1 above <paramref name="to"/>; falling if from &gt; to.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Step(float from, float to, float x)
    {
        var t = Clamp((x - from) / (to - from), 0f, 1f);
        return t * t * (3f - (2f * t));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Mix(float a, float b, float t) => a + ((b - a) * t);

    /// <summary>Share of a step on which a linearly changing distance lies below a level.</summary>
    public static float Below(float from, float to, float level)
    {
        var a = level - from;
        var b = level - to;
        if (a >= 0f && b >= 0f)
        {
            return 1f;
        }

        if (a <= 0f && b <= 0f)
        {
            return 0f;
        }

        return a > 0f ? a / (a - b) : b / (b - a);
    }

    /// <summary>Union rounded over a width of <paramref name="k"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Join(float a, float b, float k)
    {
        var h = MathF.Max(k - MathF.Abs(a - b), 0f);
        return MathF.Min(a, b) - (h * h * 0.25f / k);
    }

    /// <summary>Intersection rounded over a width of <paramref name="k"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Cut(float a, float b, float k)
    {
        var h = MathF.Max(k - MathF.Abs(a - b), 0f);
        return MathF.Max(a, b) + (h * h * 0.25f / k);
    }

    /// <summary>Exact on the surface, first order near it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float ToOval(in Oval oval, Vec3 p)
    {
        var q = p - oval.Centre;
        float ax = q.X * oval.Inverse.X, ay = q.Y * oval.Inverse.Y, az = q.Z * oval.Inverse.Z;
        var k0 = MathF.Sqrt((ax * ax) + (ay * ay) + (az * az));
        float bx = ax * oval.Inverse.X, by = ay * oval.Inverse.Y, bz = az * oval.Inverse.Z;
        var k1 = MathF.Sqrt((bx * bx) + (by * by) + (bz * bz));
        return k0 < 1e-3f
            ? -MathF.Min(oval.Radii.X, MathF.Min(oval.Radii.Y, oval.Radii.Z))
            : k0 * (k0 - 1f) / k1;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float ToCone(in Cone cone, Vec3 p)
    {
        var along = cone.To - cone.From;
        var q = p - cone.From;
        var h = Clamp(q.Dot(along) * cone.InverseSquare, 0f, 1f);
        return (q - (along * h)).Length - Mix(cone.RadiusFrom, cone.RadiusTo, h);
    }

    /// <summary>
    /// How far a ray (a whole line) passes from a capsule at its nearest, judged by the larger radius; at most the true
    /// distance. For leaving out what a ray cannot meet.
    /// </summary>
    /// <param name="cone">Capsule.</param>
    /// <param name="origin">A point of the line.</param>
    /// <param name="direction">Unit direction of the line.</param>
    public static float LineToCone(in Cone cone, Vec3 origin, Vec3 direction)
    {
        var a = cone.From - origin;
        var b = cone.To - origin;
        a = a - (direction * a.Dot(direction));
        b = b - (direction * b.Dot(direction));
        var along = b - a;
        var h = Clamp(-a.Dot(along) / MathF.Max(along.Dot(along), 1e-6f), 0f, 1f);
        return (a + (along * h)).Length - MathF.Max(cone.RadiusFrom, cone.RadiusTo);
    }
}
