using ElbowAssist.Phantom.NearMiss.Rendering;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.NearMiss;

/// <summary>
/// Collects the parts of a body region in adult millimetres: Y proximal, X to one side, Z towards the tube of the
/// region's usual front view. Every length is drawn a little differently.
/// </summary>
internal sealed class SceneBuilder(CounterRandom random, float maturity)
{
    private readonly List<NearMissPart> softParts = [];
    private readonly List<NearMissPart> solidParts = [];
    private readonly List<NearMissSolid> solids = [];

    /// <summary>Draws of this scene.</summary>
    public CounterRandom Random => random;

    /// <summary>1 for a grown skeleton, less for one with open growth plates.</summary>
    public float Maturity => maturity;

    /// <summary>A value drawn within a relative range.</summary>
    public float About(double value, double range = 0.12) => (float)(value * random.Uniform(1 - range, 1 + range));

    public float Uniform(double from, double to) => (float)random.Uniform(from, to);

    /// <summary>Adds a solid made of parts.</summary>
    public void Solid(
        NearMissMaterial material, float join, Vec3 axis, float cortex, float cortexEnd, float spongy, float spongyEnd, params ReadOnlySpan<NearMissPart> parts)
    {
        var first = solidParts.Count;
        foreach (var part in parts)
        {
            solidParts.Add(part);
        }

        solids.Add(new NearMissSolid
        {
            First = first,
            Count = parts.Length,
            Material = material,
            Join = join,
            Axis = axis.Length > 1e-3f ? axis.Unit : new Vec3(0, 1, 0),
            CortexMiddle = cortex,
            CortexEnd = cortexEnd,
            SpongyMiddle = spongy,
            SpongyEnd = spongyEnd,
        });
    }

    /// <summary>Adds a short or irregular bone: thin cortex, spongy inside.</summary>
    public void ShortBone(float join, params ReadOnlySpan<NearMissPart> parts)
    {
        var spongy = Uniform(0.1, 0.22);
        Solid(NearMissMaterial.Bone, join, new Vec3(0, 1, 0), Uniform(0.6, 1.1), Uniform(0.6, 1.1), spongy, spongy, parts);
    }

    /// <summary>
    /// Adds a long bone. In a growing skeleton its shaft ends in flat metaphyses, and its joint ends are nuclei beyond a gap
    /// of cartilage, smaller the younger, or not there yet.
    /// </summary>
    /// <param name="from">Centre of one end.</param>
    /// <param name="to">Centre of the other end.</param>
    /// <param name="radiusFrom">Half width of the first end.</param>
    /// <param name="radiusMiddle">Half width of the shaft.</param>
    /// <param name="radiusTo">Half width of the second end.</param>
    /// <param name="across">Direction in which the ends are flattened.</param>
    /// <param name="flattening">How much.</param>
    /// <param name="joined">More of the shaft, such as a neck.</param>
    /// <param name="jointEnd">The joint end beyond <paramref name="to"/>: one bone with the shaft once grown.</param>
    public void LongBone(
        Vec3 from,
        Vec3 to,
        float radiusFrom,
        float radiusMiddle,
        float radiusTo,
        Vec3 across,
        float flattening,
        NearMissPart[]? joined = null,
        NearMissPart[]? jointEnd = null)
    {
        var axis = to - from;
        var along = axis.Unit;
        var cortex = radiusMiddle * Uniform(0.3, 0.5);
        var bow = across * (axis.Length * Uniform(-0.015, 0.015));
        Vec3 At(float share) => from + (axis * share) + (share is > 0.2f and < 0.8f ? bow : default);
        var grown = maturity >= 0.98f;
        List<NearMissPart> parts =
        [
            Capsule(At(0.32f), radiusMiddle, At(0.68f), radiusMiddle * Uniform(0.9, 1.1)),
            Capsule(from, radiusFrom * 0.92f, At(0.36f), radiusMiddle * 0.92f, across, flattening),
            Capsule(to, radiusTo * 0.92f, At(0.64f), radiusMiddle * 0.92f, across, flattening),
            .. joined ?? [],
        ];
        if (grown)
        {
            parts.AddRange(jointEnd ?? []);
        }
        else
        {
            parts.Add(Carve(Flat(from, along * -1, radiusFrom)));
            if (jointEnd is null || joined is null)
            {
                parts.Add(Carve(Flat(to, along, radiusTo)));
            }
        }

        Solid(
            NearMissMaterial.Bone, radiusMiddle * 0.35f, axis, cortex, Uniform(0.5, 1.0), Uniform(0.01, 0.05), Uniform(0.1, 0.22), [.. parts]);
        if (!grown && random.Chance(maturity + 0.5))
        {
            var wide = along.Cross(across);
            ShortBone(1f, Nucleus(from, radiusFrom, wide));
            ShortBone(1.5f, jointEnd is null ? [Nucleus(to, radiusTo, wide)] : Smaller(jointEnd));
        }
    }

    private float NucleusShare => 0.35f + (0.6f * maturity);

    /// <summary>A ball so large that it cuts a shaft nearly flat, short of its end.</summary>
    private static NearMissPart Flat(Vec3 end, Vec3 outward, float radius)
    {
        const float large = 90;
        return Ball(end + (outward * (large - (0.4f * radius) - 1f)), large);
    }

    private NearMissPart Nucleus(Vec3 end, float radius, Vec3 wide)
    {
        var half = wide * (0.4f * radius * NucleusShare);
        var thick = 0.36f * radius * NucleusShare;
        return Capsule(end - half, thick * Uniform(0.8, 1.1), end + half, thick);
    }

    private NearMissPart[] Smaller(NearMissPart[] parts)
    {
        var own = parts.Where(p => p.Carves == 0).ToArray();
        var middle = own.Aggregate(default(Vec3), (sum, p) => sum + p.From + p.To) * (0.5f / own.Length);
        var share = NucleusShare;
        return
        [
            .. parts.Select(p => p with
            {
                From = middle + ((p.From - middle) * share),
                To = middle + ((p.To - middle) * share),
                RadiusFrom = p.RadiusFrom * share,
                RadiusTo = p.RadiusTo * share,
            }),
        ];
    }

    /// <summary>Adds a part of the skin surface.</summary>
    public void Soft(Vec3 from, float radiusFrom, Vec3 to, float radiusTo, Vec3 across = default, float flattening = 1f) =>
        softParts.Add(Capsule(from, radiusFrom, to, radiusTo, across, flattening));

    public static NearMissPart Capsule(
        Vec3 from, float radiusFrom, Vec3 to, float radiusTo, Vec3 across = default, float flattening = 1f) => new()
        {
            From = from,
            To = to,
            RadiusFrom = radiusFrom,
            RadiusTo = radiusTo,
            Across = across.Length > 1e-3f ? across.Unit : new Vec3(0, 0, 1),
            Flattening = flattening,
        };

    public static NearMissPart Ball(Vec3 centre, float radius, Vec3 across = default, float flattening = 1f) =>
        Capsule(centre, radius, centre, radius, across, flattening);

    public static NearMissPart Carve(NearMissPart part)
    {
        part.Carves = 1;
        return part;
    }

    /// <summary>The solids and parts, scaled, with bounds.</summary>
    public (NearMissSolid[] Solids, NearMissPart[] Parts, int SoftFirst) Finish(float scale)
    {
        var parts = solidParts.Concat(softParts).Select(part => Scaled(part, scale)).ToArray();
        var bounded = solids.Select(solid => Bounded(solid, parts, scale)).ToArray();
        return (bounded, parts, solidParts.Count);
    }

    private static NearMissPart Scaled(NearMissPart part, float scale)
    {
        part.From *= scale;
        part.To *= scale;
        part.RadiusFrom *= scale;
        part.RadiusTo *= scale;
        return part;
    }

    private static NearMissSolid Bounded(NearMissSolid solid, NearMissPart[] parts, float scale)
    {
        var own = parts.AsSpan(solid.First, solid.Count);
        var sum = default(Vec3);
        foreach (var part in own)
        {
            sum += part.From + part.To;
        }

        solid.BoundCentre = sum * (0.5f / own.Length);
        foreach (var part in own)
        {
            if (part.Carves == 0)
            {
                var reach = MathF.Max(
                    (part.From - solid.BoundCentre).Length + part.RadiusFrom, (part.To - solid.BoundCentre).Length + part.RadiusTo);
                solid.BoundRadius = MathF.Max(solid.BoundRadius, reach);
            }
        }

        solid.BoundRadius += solid.Join * 0.3f;
        solid.HalfLength = solid.BoundRadius;
        solid.Join *= scale;
        solid.CortexMiddle *= scale;
        solid.CortexEnd *= scale;
        return solid;
    }
}
