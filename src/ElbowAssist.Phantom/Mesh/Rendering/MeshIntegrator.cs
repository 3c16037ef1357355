using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh.Rendering;

/// <summary>
/// Walks one ray through an elbow whose bones are meshes. Soft tissue, fat pads, metal, and the shell, marrow and spongy
/// bone under each surface are those of the parametric elbow that the meshes were registered to.
/// </summary>
internal static class MeshIntegrator
{
    /// <summary>Path lengths of the ray through a place on the film, in pixels.</summary>
    public static RayPaths Trace(in ElbowGeometry g, MeshBones bones, float x, float y)
    {
        var limb = RayIntegrator.Limb(in g, x, y);
        return Trace(in g, bones, x, y, in limb);
    }

    /// <summary>Path lengths of a ray whose limb is known.</summary>
    public static RayPaths Trace(in ElbowGeometry g, MeshBones bones, float x, float y, in LimbPath limb)
    {
        var target = g.Camera.Corner + (g.Camera.StepX * x) + (g.Camera.StepY * y);
        var direction = (target - g.Camera.Source).Unit;
        var paths = new RayPaths { Soft = limb.Soft, Fat = limb.Fat, Cast = limb.Cast };
        if (limb.To <= limb.From)
        {
            return paths;
        }

        paths.Humerus = Bone(in g, bones, 0, target, direction, in limb, ref paths.Bone);
        paths.Ulna = Bone(in g, bones, 1, target, direction, in limb, ref paths.Bone);
        paths.Radius = Bone(in g, bones, 2, target, direction, in limb, ref paths.Bone);
        Pad(in g, bones, in g.Soft.AnteriorPad, target, direction, ref paths);
        Pad(in g, bones, in g.Soft.PosteriorPad, target, direction, ref paths);
        paths.Soft = MathF.Max(paths.Soft - paths.Bone, 0f);
        paths.Metal = g.HasMetal != 0 ? MetalGeometry.Path(in g.Metal, target, direction) : 0f;
        return paths;
    }

    /// <summary>Adds up compact bone along a ray.</summary>
    /// <returns>Path inside the surface.</returns>
    private static float Bone(
        in ElbowGeometry g, MeshBones bones, int bone, Vec3 target, Vec3 direction, in LimbPath limb, ref float compact)
    {
        var surface = bones.Surface(bone);
        var origin = MeshBones.ToBone(in g, bone, target);
        var along = MeshBones.DirectionToBone(in g, bone, direction);
        float t = limb.From, end = limb.To;
        if (!Box(surface, origin, along, ref t, ref end))
        {
            return 0f;
        }

        // Steps of varying length: even ones would show as rings where the texture is sampled in step.
        var jitter = (uint)(int)(target.X * 977f) ^ ((uint)(int)(target.Y * 3571f) << 3) ^ (uint)(int)(target.Z * 7331f);
        var outer = 0f;
        var d = surface.At(origin + (along * t));
        while (t < end)
        {
            var step = d > 0f
                ? MathF.Max(d * 0.95f, 0.4f)
                : Distance.Clamp(-d * 0.7f, 0.4f, 2f) * (0.7f + (0.6f * (jitter >> 8) * (1f / 16777216f)));
            jitter = (jitter * 1664525u) + 1013904223u;
            var next = t + step;
            var dNext = surface.At(origin + (along * next));
            if (d < 0f || dNext < 0f)
            {
                outer += step * Distance.Below(d, dNext, 0f);
                var tissue = Tissue(in g, bone, origin + (along * (t + (0.5f * step))), MathF.Max(-d, -dNext));
                compact += tissue.Along(step, d, dNext);
            }

            t = next;
            d = dNext;
        }

        return outer;
    }

    private static BoneTissue Tissue(in ElbowGeometry g, int bone, Vec3 inBone, float depth) => bone switch
    {
        0 => HumerusField.Tissue(in g.Humerus, inBone, depth, g.NoiseSeed),
        1 => UlnaField.Tissue(in g.Ulna, inBone, depth, g.NoiseSeed),
        _ => RadiusField.Tissue(in g.Radius, inBone, depth, g.NoiseSeed),
    };

    /// <summary>Cuts a stretch of a ray to the box of a grid; false if nothing is left.</summary>
    private static bool Box(DistanceGrid grid, Vec3 origin, Vec3 direction, ref float from, ref float to)
    {
        Slab(origin.X, direction.X, grid.Least.X, grid.Most.X, ref from, ref to);
        Slab(origin.Y, direction.Y, grid.Least.Y, grid.Most.Y, ref from, ref to);
        Slab(origin.Z, direction.Z, grid.Least.Z, grid.Most.Z, ref from, ref to);
        return from < to;
    }

    private static void Slab(float o, float v, float least, float most, ref float from, ref float to)
    {
        var inverse = 1f / (MathF.Abs(v) < 1e-6f ? 1e-6f : v);
        float a = (least - o) * inverse, b = (most - o) * inverse;
        from = MathF.Max(from, MathF.Min(a, b));
        to = MathF.Min(to, MathF.Max(a, b));
    }

    private static void Pad(
        in ElbowGeometry g, MeshBones bones, in FatPadGeometry pad, Vec3 target, Vec3 direction, ref RayPaths paths)
    {
        if (FatPadGeometry.Chord(in pad, target, direction, out var from, out var length))
        {
            var fat = 0f;
            for (var i = 0; i < 5; i++)
            {
                var p = target + (direction * (from + (length * (i + 0.5f) * 0.2f)));
                fat += bones.Distance(in g, 0, p) > 0f ? 0.2f * length : 0f;
            }

            paths.TurnToFat(fat);
        }
    }
}
