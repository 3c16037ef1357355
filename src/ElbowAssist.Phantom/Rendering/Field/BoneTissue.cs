using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Bone under a surface: a compact shell of a thickness (mm), below it spongy bone of a volume fraction.</summary>
internal readonly record struct BoneTissue(float Cortex, float Spongy)
{
    /// <summary>
    /// Compact bone from the surface down to a depth along the normal, millimetres; linear in pieces, so that a step
    /// of a ray is integrated exactly wherever the distance changes linearly. Negative depths hold none.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public float To(float depth)
    {
        // The shell fades into the spongy bone over its inner quarter.
        var shell = 0.875f * Cortex;
        var d = MathF.Max(depth, 0f);
        return MathF.Min(d, shell) + (Spongy * MathF.Max(d - shell, 0f));
    }

    /// <summary>Compact bone along a step of a ray on which the signed distance to the surface changes linearly.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public float Along(float step, float distance, float next)
    {
        var change = distance - next;
        return MathF.Abs(change) > 0.02f * step
            ? step * (To(-next) - To(-distance)) / change
            : step * (To(-distance + 0.05f) - To(-distance - 0.05f)) * 10f;
    }
}
