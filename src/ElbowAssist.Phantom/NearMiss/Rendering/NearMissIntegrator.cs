using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.NearMiss.Rendering;

/// <summary>Walks one ray through a near-miss scene and adds up materials. The same code runs on the CPU and on a GPU.</summary>
internal static class NearMissIntegrator
{
    /// <summary>Path lengths of the ray through a place on the film, in pixels.</summary>
    public static RayPaths Trace<TStore>(in NearMissScene scene, TStore store, float x, float y)
        where TStore : struct, INearMissStore
    {
        var target = scene.Camera.Corner + (scene.Camera.StepX * x) + (scene.Camera.StepY * y);
        var ray = target - scene.Camera.Source;
        var direction = ray * (1f / ray.Length);
        var paths = default(RayPaths);
        SoftTissue(in scene, store, target, direction, ref paths);
        float bone = 0f, air = 0f;
        for (var i = 0; i < scene.SolidCount; i++)
        {
            var solid = store.Solid(i);
            var toCentre = solid.BoundCentre - target;
            var along = toCentre.Dot(direction);
            var chord = (solid.BoundRadius * solid.BoundRadius) - toCentre.Dot(toCentre) + (along * along);
            if (chord <= 0f)
            {
                continue;
            }

            var half = MathF.Sqrt(chord);
            var inside = Solid(in scene, store, in solid, target, direction, along - half, along + half);
            if (solid.Material == NearMissMaterial.Metal)
            {
                paths.Metal += inside;
            }
            else if (solid.Material == NearMissMaterial.Air)
            {
                air += inside;
            }
            else
            {
                bone += inside;
            }
        }

        paths.Bone = bone;
        var body = paths.Soft + paths.Fat;
        var full = MathF.Max(body, 1e-3f);
        var kept = MathF.Max(body - air, 0f) / full;
        paths.Soft = MathF.Max((paths.Soft * kept) - bone - paths.Metal, 0f);
        paths.Fat *= kept;
        return paths;
    }

    /// <summary>Compact bone, metal or air along the stretch of a ray inside a bounding sphere.</summary>
    private static float Solid<TStore>(
        in NearMissScene scene, TStore store, in NearMissSolid solid, Vec3 target, Vec3 direction, float from, float to)
        where TStore : struct, INearMissStore
    {
        var t = from;
        var d = NearMissField.ToRun(store, solid.First, solid.Count, solid.Join, target + (direction * t));
        var sum = 0f;
        for (var i = 0; i < 160 && t < to; i++)
        {
            var step = d > 0f ? MathF.Max(d * 0.8f, 0.35f) : Distance.Clamp(-d * 0.6f, 0.5f, 3f);
            var next = t + step;
            var dNext = NearMissField.ToRun(store, solid.First, solid.Count, solid.Join, target + (direction * next));
            if (d < 0f || dNext < 0f)
            {
                if (solid.Material == NearMissMaterial.Bone)
                {
                    var tissue = NearMissField.Tissue(in solid, target + (direction * (t + (0.5f * step))), scene.NoiseSeed);
                    sum += tissue.Along(step, d, dNext);
                }
                else
                {
                    sum += step * Distance.Below(d, dNext, 0f);
                }
            }

            t = next;
            d = dNext;
        }

        return sum;
    }

    private static void SoftTissue<TStore>(
        in NearMissScene scene, TStore store, Vec3 target, Vec3 direction, ref RayPaths paths)
        where TStore : struct, INearMissStore
    {
        var t = -scene.Camera.HalfDepth;
        var d = NearMissField.ToRun(store, scene.SoftFirst, scene.SoftCount, scene.SoftJoin, target + (direction * t));
        var cast = scene.CastOuter > scene.CastInner;
        for (var i = 0; i < 200 && t < scene.Camera.HalfDepth; i++)
        {
            var near = MathF.Min(MathF.Abs(d), MathF.Abs(d + scene.Skin + scene.FatLayer));
            near = cast ? MathF.Min(near, MathF.Abs(d - scene.CastInner)) : near;
            var step = d > scene.CastOuter + 4f ? MathF.Max(d * 0.7f - scene.CastOuter, 1.5f) : Distance.Clamp(near, 1.2f, 7f);
            var next = t + step;
            var p = target + (direction * next);
            var dNext = NearMissField.ToRun(store, scene.SoftFirst, scene.SoftCount, scene.SoftJoin, p);
            var within = step * Distance.Below(d, dNext, 0f);
            if (within > 0f)
            {
                var inner = -scene.Skin - scene.FatLayer;
                var fat = step * (Distance.Below(d, dNext, -scene.Skin) - Distance.Below(d, dNext, inner));
                var muscle = step * Distance.Below(d, dNext, inner);
                var grain = new Vec3(p.X * scene.Grain.X, p.Y * scene.Grain.Y, p.Z * scene.Grain.Z);
                var n = TissueNoise.Smooth(grain, scene.NoiseSeed + 9u);
                fat += muscle * scene.Marbling * (1f - Distance.Step(0.03f, 0.16f, MathF.Abs(n)));
                paths.Fat += fat;
                paths.Soft += within - fat;
            }

            if (cast)
            {
                paths.Cast += step * (Distance.Below(d, dNext, scene.CastOuter) - Distance.Below(d, dNext, scene.CastInner));
            }

            t = next;
            d = dNext;
        }
    }
}
