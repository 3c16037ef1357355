using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>
/// A break of one bone, in the bone's own frame. The fragment is where both n·p exceed their offsets in the unbroken
/// bone; each side may lie in a frame of its own.
/// </summary>
internal struct BreakGeometry
{
    /// <summary>0 if the bone is whole.</summary>
    public int Active;
    public Vec3 Normal1, Normal2;
    public float Offset1, Offset2;

    /// <summary>Unevenness of the break and width of the crack.</summary>
    public float Roughness, Gap;

    /// <summary>Width over which a healed break is rounded; 0 while it is fresh.</summary>
    public float Healed;

    /// <summary>Where the rest of the bone, and the fragment, have come to lie.</summary>
    public Frame Rest, Fragment;

    /// <summary>Negative inside the fragment, in the coordinates of the unbroken bone.</summary>
    public static float Region(in BreakGeometry b, Vec3 p, uint seed)
    {
        var plane = MathF.Max(b.Offset1 - b.Normal1.Dot(p), b.Offset2 - b.Normal2.Dot(p));
        return MathF.Abs(plane) < 3f ? plane + (b.Roughness * TissueNoise.Smooth(p * 0.45f, seed)) : plane;
    }

    /// <summary>Both sides of the break as one distance.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Both(in BreakGeometry b, float rest, float fragment) =>
        b.Healed > 0f ? Distance.Join(rest, fragment, b.Healed) : MathF.Min(rest, fragment);

    /// <summary>Distance to the rest of the bone from the distance to the unbroken bone there.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float OfRest(in BreakGeometry b, float whole, float region) =>
        0.9f * Distance.Cut(whole, (0.5f * b.Gap) - region, 0.5f);

    /// <summary>Distance to the fragment from the distance to the unbroken bone there.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float OfFragment(in BreakGeometry b, float whole, float region) =>
        0.9f * Distance.Cut(whole, (0.5f * b.Gap) + region, 0.5f);
}
