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

    /// <summary>Adds a long bone; in a growing skeleton its ends are nuclei beyond a gap of cartilage.</summary>
    /// <param name="from">Centre of one end.</param>
    /// <param name="to">Centre of the other end.</param>
    /// <param name="radiusFrom">Half width of the first end.</param>
    /// <param name="radiusMiddle">Half width of the shaft.</param>
    /// <param name="radiusTo">Half width of the second end.</param>
    /// <param name="across">Direction in which the ends are flattened.</param>
    /// <param name="flattening">How much.</param>
    public void LongBone(
        Vec3 from, Vec3 to, float radiusFrom, float radiusMiddle, float radiusTo, Vec3 across, float flattening)
    {
        var axis = to - from;
        var cortex = radiusMiddle * Uniform(0.3, 0.5);
        var bow = across * (axis.Length * Uniform(-0.015, 0.015));
        Vec3 At(float share) => from + (axis * share) + (share is > 0.2f and < 0.8f ? bow : default);
        var nucleus = maturity < 0.98f ? 0.3f + (0.7f * maturity) : 1f;
        var first = maturity < 0.98f ? (radiusFrom * 0.75f) + 2f : 0f;
        var last = maturity < 0.98f ? (radiusTo * 0.75f) + 2f : 0f;
        var length = axis.Length;
        var start = MathF.Min(0.2f, first / length);
        var end = 1f - MathF.Min(0.2f, last / length);
        Solid(
            NearMissMaterial.Bone, radiusMiddle * 0.35f, axis, cortex, Uniform(0.5, 1.0), Uniform(0.01, 0.05), Uniform(0.1, 0.22),
            Capsule(At(0.32f), radiusMiddle, At(0.68f), radiusMiddle * Uniform(0.9, 1.1)),
            Capsule(At(start), radiusFrom * 0.92f, At(0.36f), radiusMiddle * 0.92f, across, flattening),
            Capsule(At(end), radiusTo * 0.92f, At(0.64f), radiusMiddle * 0.92f, across, flattening));
        if (maturity < 0.98f && random.Chance(maturity + 0.5))
        {
            ShortBone(1f, Capsule(from, radiusFrom * 0.55f * nucleus, from, radiusFrom * 0.55f * nucleus, across, flattening));
            ShortBone(1f, Capsule(to, radiusTo * 0.55f * nucleus, to, radiusTo * 0.55f * nucleus, across, flattening));
        }
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
