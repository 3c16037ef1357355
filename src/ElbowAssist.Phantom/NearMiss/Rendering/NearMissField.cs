using System.Runtime.CompilerServices;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.NearMiss.Rendering;

/// <summary>Signed distances of near-miss scenes, negative inside, millimetres.</summary>
internal static class NearMissField
{
    private const float Far = 1e6f;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float ToPart(in NearMissPart part, Vec3 p)
    {
        var q = p - part.From;
        q += part.Across * (q.Dot(part.Across) * (part.Flattening - 1f));
        var along = part.To - part.From;
        var h = Distance.Clamp(q.Dot(along) / (along.Dot(along) + 1e-6f), 0f, 1f);
        var d = (q - (along * h)).Length - Distance.Mix(part.RadiusFrom, part.RadiusTo, h);
        return d * (0.5f + (0.5f / part.Flattening));
    }

    /// <summary>Distance to a run of parts.</summary>
    public static float ToRun<TStore>(TStore store, int first, int count, float join, Vec3 p)
        where TStore : struct, INearMissStore
    {
        var d = Far;
        for (var i = first; i < first + count; i++)
        {
            var part = store.Part(i);
            var toPart = ToPart(in part, p);
            d = part.Carves != 0 ? Distance.Cut(d, -toPart, join) : Distance.Join(d, toPart, join);
        }

        return d;
    }

    /// <summary>Tissue of a bone at a place inside it.</summary>
    public static BoneTissue Tissue(in NearMissSolid bone, Vec3 p, uint seed)
    {
        var q = p - bone.BoundCentre;
        var along = q.Dot(bone.Axis);
        var end = Distance.Step(0.45f, 0.9f, MathF.Abs(along) / bone.HalfLength);
        var grain = q - (bone.Axis * (along * 0.65f));
        var coarse = TissueNoise.Smooth(grain * 0.3f, seed);
        var fine = TissueNoise.Smooth(grain * 0.9f, seed + 1u);
        var cortex = Distance.Mix(bone.CortexMiddle, bone.CortexEnd, end) * (1f + (0.22f * coarse));
        var spongy = Distance.Mix(bone.SpongyMiddle, bone.SpongyEnd, end);
        return new BoneTissue(cortex, MathF.Max(spongy * (1f + (0.9f * fine) + (0.3f * coarse)), 0f));
    }
}
