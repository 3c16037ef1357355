using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Walks one ray through the elbow and adds up materials. The same code runs on the CPU and on a GPU.</summary>
internal static class RayIntegrator
{
    private const int Humerus = 0;
    private const int Ulna = 1;
    private const int Radius = 2;

    /// <summary>Share of compact bone in bones drawn without shell and marrow: a choice of this project.</summary>
    private const float SolidDensity = 0.35f;

    /// <summary>Path lengths of the ray through a place on the film, in pixels.</summary>
    public static RayPaths Trace(in ElbowGeometry g, float x, float y)
    {
        var limb = Limb(in g, x, y);
        return Trace(in g, x, y, in limb);
    }

    /// <summary>The limb without its bones along the ray through a place on the film, in pixels.</summary>
    public static LimbPath Limb(in ElbowGeometry g, float x, float y)
    {
        var target = Target(in g, x, y);
        return SoftTissue(in g, target, Direction(in g, target));
    }

    /// <summary>Path lengths of a ray whose limb is known.</summary>
    public static RayPaths Trace(in ElbowGeometry g, float x, float y, in LimbPath limb)
    {
        var target = Target(in g, x, y);
        var direction = Direction(in g, target);
        var paths = new RayPaths { Soft = limb.Soft, Fat = limb.Fat, Cast = limb.Cast };
        if (limb.To <= limb.From)
        {
            return paths;
        }

        var span = new Span(limb.From, limb.To);

        var h = Bone(in g, Humerus, target, direction, span);
        var u = Bone(in g, Ulna, target, direction, span);
        var r = Bone(in g, Radius, target, direction, span);
        paths.Humerus = h.Outer;
        paths.Ulna = u.Outer;
        paths.Radius = r.Outer;
        paths.Bone = g.SolidBones != 0 ? SolidDensity * (h.Outer + u.Outer + r.Outer) : h.Compact + u.Compact + r.Compact;
        Pad(in g, in g.Soft.AnteriorPad, target, direction, ref paths);
        Pad(in g, in g.Soft.PosteriorPad, target, direction, ref paths);
        paths.Soft = MathF.Max(paths.Soft - paths.Bone, 0f);
        if (g.HasMetal != 0)
        {
            paths.Metal = MetalGeometry.Path(in g.Metal, target, direction);
        }

        return paths;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vec3 Target(in ElbowGeometry g, float x, float y) =>
        g.Camera.Corner + (g.Camera.StepX * x) + (g.Camera.StepY * y);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vec3 Direction(in ElbowGeometry g, Vec3 target)
    {
        var ray = target - g.Camera.Source;
        return ray * (1f / ray.Length);
    }

    /// <summary>Signed distance to one of the bones, or to all.</summary>
    internal static float BoneDistance(in ElbowGeometry g, int bone, Vec3 p)
    {
        if (bone == Humerus)
        {
            return HumerusField.Evaluate(in g.Humerus, p);
        }

        return bone == Ulna ? UlnaField.Evaluate(in g.Ulna, p) : RadiusField.Evaluate(in g.Radius, p);
    }

    private static BoneTissue Tissue(in ElbowGeometry g, int bone, Vec3 p, float depth)
    {
        if (bone == Humerus)
        {
            return HumerusField.Tissue(in g.Humerus, HumerusField.BeforeBreak(in g.Humerus, p), depth, g.NoiseSeed);
        }

        return bone == Ulna
            ? UlnaField.Tissue(in g.Ulna, Frame.ToLocal(in g.Ulna.Forearm, p), depth, g.NoiseSeed)
            : RadiusField.Tissue(in g.Radius, Frame.ToLocal(in g.Radius.Bone, p), depth, g.NoiseSeed);
    }

    private static bool MayMeet(in ElbowGeometry g, int bone, Vec3 target, Vec3 direction)
    {
        if (bone == Humerus)
        {
            return g.Humerus.Break.Active != 0
                || Distance.LineToCone(in g.Humerus.ShaftBound, target, direction) < 6f
                || Distance.LineToCone(in g.Humerus.JointBound, target, direction) < 6f;
        }

        if (bone == Ulna)
        {
            var o = Frame.ToLocal(in g.Ulna.Forearm, target);
            var v = Frame.DirectionToLocal(in g.Ulna.Forearm, direction);
            return g.Ulna.Break.Active != 0 || Distance.LineToCone(in g.Ulna.JointBound, o, v) < 6f || Distance.LineToCone(in g.Ulna.ShaftBound, o, v) < 6f;
        }

        var q = Frame.ToLocal(in g.Radius.Bone, target);
        var w = Frame.DirectionToLocal(in g.Radius.Bone, direction);
        return g.Radius.Break.Active != 0 || Distance.LineToCone(in g.Radius.Bound1, q, w) < 6f || Distance.LineToCone(in g.Radius.Bound2, q, w) < 6f;
    }

    /// <summary>Walks through the limb; gives the stretch of the ray inside the skin, relative to the film plane.</summary>
    private static LimbPath SoftTissue(in ElbowGeometry g, Vec3 target, Vec3 direction)
    {
        var paths = default(LimbPath);
        var t = -g.Camera.HalfDepth;
        var d = SoftTissueField.Skin(in g.Soft, target + (direction * t));
        float first = 1f, last = 0f;
        var inside = false;
        var cast = g.Soft.CastOuter > g.Soft.CastInner;
        for (var i = 0; i < 160 && t < g.Camera.HalfDepth; i++)
        {
            var near = MathF.Min(MathF.Abs(d), MathF.Abs(d + g.Soft.Skin + g.Soft.FatLayer));
            if (cast)
            {
                near = MathF.Min(near, MathF.Min(MathF.Abs(d - g.Soft.CastInner), MathF.Abs(d - g.Soft.CastOuter)));
            }

            var step = Distance.Clamp(d > 0f && !cast ? d * 0.8f : near, 2.5f, 9f);
            if (d > 9f && !cast)
            {
                step = d * 0.8f;
            }

            var next = t + step;
            var p = target + (direction * next);
            var dNext = SoftTissueField.Skin(in g.Soft, p);
            var within = step * Distance.Below(d, dNext, 0f);
            if (within > 0f)
            {
                if (!inside)
                {
                    first = next - within;
                    inside = true;
                }

                last = t + within > last && dNext > 0f ? t + within : next;
                var inFat = step * (Distance.Below(d, dNext, -g.Soft.Skin) - Distance.Below(d, dNext, -g.Soft.Skin - g.Soft.FatLayer));
                var muscle = step * Distance.Below(d, dNext, -g.Soft.Skin - g.Soft.FatLayer);
                if (muscle > 0f && g.Soft.Marbling > 0f)
                {
                    var q = Frame.ToLocal(in g.Soft.Forearm, p);
                    var along = p.Y > q.X
                        ? new Vec3(p.X * 0.07f, p.Y * 0.018f, p.Z * 0.07f)
                        : new Vec3(q.X * 0.018f, q.Y * 0.07f, q.Z * 0.07f);
                    var n = TissueNoise.Smooth(along, g.NoiseSeed + 9u);
                    inFat += muscle * g.Soft.Marbling * (1f - Distance.Step(0.03f, 0.16f, MathF.Abs(n)));
                }

                paths.Fat += inFat;
                paths.Soft += within - inFat;
            }

            if (cast)
            {
                var c = step * (Distance.Below(d, dNext, g.Soft.CastOuter) - Distance.Below(d, dNext, g.Soft.CastInner));
                if (c > 0f)
                {
                    var side = Distance.Step(2f, -2f, g.Soft.CastNormal.Dot(p) - g.Soft.CastOffset);
                    var mesh = 1f + (g.Soft.CastMesh * TissueNoise.Smooth(p * 0.28f, g.NoiseSeed + 11u));
                    paths.Cast += c * side * mesh;
                }
            }

            t = next;
            d = dNext;
        }

        // A swollen or displaced bone may reach a little beyond the smooth skin.
        var beyond = last > first ? 4f : 0f;
        (paths.From, paths.To) = (first - beyond, last + beyond);
        return paths;
    }

    private static BonePath Bone(in ElbowGeometry g, int bone, Vec3 target, Vec3 direction, Span span)
    {
        float outer = 0f, compact = 0f;
        if (!MayMeet(in g, bone, target, direction))
        {
            return new BonePath(outer, compact);
        }

        // Steps of varying length: even ones would show as rings where the texture is sampled in step.
        var jitter = (uint)(int)(target.X * 977f) ^ ((uint)(int)(target.Y * 3571f) << 3) ^ (uint)(int)(target.Z * 7331f);
        var t = span.From;
        var d = BoneDistance(in g, bone, target + (direction * t));
        for (var i = 0; i < 220 && t < span.To; i++)
        {
            var step = d > 0f ? MathF.Max(d * 0.9f, 0.5f) : Distance.Clamp(-d * 0.7f, 0.7f, 2.2f) * (0.7f + (0.6f * (jitter >> 8) * (1f / 16777216f)));
            jitter = (jitter * 1664525u) + 1013904223u;
            var next = t + step;
            var p = target + (direction * next);
            var dNext = BoneDistance(in g, bone, p);
            if (d < 0f || dNext < 0f)
            {
                outer += step * Distance.Below(d, dNext, 0f);
                var tissue = Tissue(in g, bone, target + (direction * (t + (0.5f * step))), MathF.Max(-d, -dNext));
                compact += tissue.Along(step, d, dNext);
            }

            t = next;
            d = dNext;
        }

        return new BonePath(outer, compact);
    }

    /// <summary>Turns muscle into fat where the ray crosses a fat pad outside the humerus.</summary>
    private static void Pad(in ElbowGeometry g, in FatPadGeometry pad, Vec3 target, Vec3 direction, ref RayPaths paths)
    {
        if (FatPadGeometry.Chord(in pad, target, direction, out var from, out var length))
        {
            var fat = 0f;
            for (var i = 0; i < 5; i++)
            {
                var p = target + (direction * (from + (length * (i + 0.5f) * 0.2f)));
                fat += HumerusField.Evaluate(in g.Humerus, p) > 0f ? 0.2f * length : 0f;
            }

            paths.TurnToFat(fat);
        }
    }

    private readonly record struct Span(float From, float To);

    private readonly record struct BonePath(float Outer, float Compact);
}
