using ElbowAssist.Phantom.Growth;
using ElbowAssist.Phantom.Injury;
using ElbowAssist.Phantom.Mesh.Rendering;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Shape;

/// <summary>One posed elbow without a film: surfaces and named points.</summary>
/// <param name="Geometry">Parametric surfaces, and the frames of the bones.</param>
/// <param name="Points">Named points.</param>
/// <param name="Meshes">Surfaces that stand in for the parametric ones of the bones, or null.</param>
internal sealed record PosedElbow(ElbowGeometry Geometry, AnatomicalPoints Points, MeshBones? Meshes);

/// <summary>Turns an elbow and its pose into surfaces and named points.</summary>
internal static class ElbowBuilder
{
    private const ulong MetalStream = 5;

    public static PosedElbow Build(ElbowCase elbow, ElbowPose pose, uint noiseSeed)
    {
        var (shape, injury) = (elbow.Shape, elbow.Injury);
        var scale = (float)(shape.Humerus.EpicondylarWidth / 63.9);
        var humerus = HumerusBuilder.Build(shape.Humerus);
        var forearm = ForearmBuilder.Forearm(pose.FlexionDegrees, shape.Ulna.ValgusDegrees);
        forearm = InjuryBuilder.Forearm(injury, forearm);
        var ulna = ForearmBuilder.Ulna(shape.Ulna, humerus, forearm);
        var radius = ForearmBuilder.Radius(shape.Radius, humerus, ref ulna, pose.ForearmRotationDegrees, InjuryBuilder.RadialHead(injury));
        var roof = HumerusBuilder.RoofHeight(shape.Humerus);
        if (shape.Growth is { } growth)
        {
            humerus.Growth = GrowthBuilder.Humerus(growth, shape.Humerus, humerus);
            ulna.Growth = GrowthBuilder.Ulna(growth, shape.Ulna, ulna);
            radius.Growth = GrowthBuilder.Radius(growth, shape.Radius);
        }

        var unbroken = Geometry(humerus, ulna, radius);
        var shaft = InjuryBuilder.Break(injury, scale, ref humerus, ref ulna, ref radius);
        var geometry = new ElbowGeometry
        {
            Humerus = humerus,
            Ulna = ulna,
            Radius = radius,
            Soft = SoftTissueBuilder.Build(shape.Soft, humerus, ulna, roof, scale),
            NoiseSeed = noiseSeed,
            HasMetal = elbow.Fixation == Fixation.None ? 0 : 1,
            Metal = FixationBuilder.Build(elbow.Fixation, new CounterRandom(elbow.Seed, MetalStream), scale, humerus, ulna),
        };
        return new PosedElbow(geometry, Points(elbow, geometry, unbroken, shaft, roof), elbow.Meshes);
    }

    private static ElbowGeometry Geometry(HumerusGeometry humerus, UlnaGeometry ulna, RadiusGeometry radius) =>
        new() { Humerus = humerus, Ulna = ulna, Radius = radius };

    /// <summary>Named points: found on the unbroken bones, then moved with their fragments.</summary>
    private static AnatomicalPoints Points(ElbowCase elbow, ElbowGeometry g, ElbowGeometry whole, Frame shaft, float roof)
    {
        var meshes = elbow.Meshes;
        var anterior = g.Soft.AnteriorPad;
        var posterior = g.Soft.PosteriorPad;
        var full = Full(whole);
        var humerus = g.Humerus;
        return new AnatomicalPoints
        {
            UnitW = meshes?.Levels.UnitW ?? (2 * g.Humerus.WaistAp),
            Shaft = shaft,
            FossaRoof = meshes?.Levels.FossaRoof ?? new Vec3(g.Humerus.OlecranonFossa.Centre.X + 2, roof, g.Humerus.OlecranonFossa.Centre.Z),
            Waist = After(g.Humerus.Break, meshes?.Levels.Waist ?? HumerusBuilder.Waist(in humerus)),
            MedialEpicondyle = After(g.Humerus.Break, Exit(full, meshes, 0, g.Humerus.MedialEpicondyle.To, new Vec3(-0.15f, -0.2f, -1))),
            LateralEpicondyle = After(g.Humerus.Break, Exit(full, meshes, 0, g.Humerus.LateralEpicondyle.To, new Vec3(-0.1f, 0, 1))),
            CoronoidTip = AfterUlna(g, Tip(whole, meshes, Outer(g, g.Ulna.Coronoid.To with { Z = 0 }), Direction(g, new Vec3(0.2f, 1, 0)), Direction(g, new Vec3(0.2f, 1, 0)))),
            OlecranonTip = AfterUlna(g, Tip(full, meshes, Outer(g, g.Ulna.Beak.To), Direction(g, new Vec3(-1, 0.35f, 0)), Direction(g, new Vec3(-1, 1, 0)))),
            AnteriorPadBase = Frame.ToOuter(in anterior.Frame, new Vec3(-anterior.Radii.X, 0, 0)),
            AnteriorPadTip = Frame.ToOuter(in anterior.Frame, new Vec3(anterior.Radii.X, 0, 0)),
            PosteriorPadTip = Frame.ToOuter(in posterior.Frame, new Vec3(posterior.Radii.X * 0.3f, posterior.Radii.Y * 0.9f, 0)),
            AnteriorPadShown = anterior.Radii.Y > 0,
            PosteriorPadShown = elbow.Shape.Soft.PosteriorPadLift > 1,
        };
    }

    /// <summary>Where a point of the unbroken bone lies after the break, in the bone's frame.</summary>
    private static Vec3 After(BreakGeometry b, Vec3 p)
    {
        if (b.Active == 0)
        {
            return p;
        }

        return BreakGeometry.Region(in b, p, 77u) < 0 ? Frame.ToOuter(in b.Fragment, p) : Frame.ToOuter(in b.Rest, p);
    }

    private static Vec3 AfterUlna(ElbowGeometry g, Vec3 p) =>
        Frame.ToOuter(in g.Ulna.Forearm, After(g.Ulna.Break, Frame.ToLocal(in g.Ulna.Forearm, p)));

    /// <summary>The same elbow with its cartilage taken for bone.</summary>
    private static ElbowGeometry Full(ElbowGeometry g)
    {
        g.Humerus.Growth = default;
        g.Ulna.Growth = default;
        g.Radius.Growth = default;
        return g;
    }

    private static Vec3 Outer(ElbowGeometry g, Vec3 p) =>
        Frame.ToOuter(in g.Ulna.Forearm, new Vec3(p.X, p.Y, (p.Z / g.Ulna.Flattening) + g.Ulna.MiddleZ));

    private static Vec3 Direction(ElbowGeometry g, Vec3 d) => Frame.DirectionToOuter(in g.Ulna.Forearm, d).Unit;

    /// <summary>A tip of the ulna: where a half line from inside leaves it; on a mesh, what reaches farthest nearby.</summary>
    private static Vec3 Tip(ElbowGeometry g, MeshBones? meshes, Vec3 from, Vec3 direction, Vec3 farthest)
    {
        var tip = Exit(g, null, 1, from, direction);
        return meshes?.Tip(in g, 1, tip, farthest) ?? tip;
    }

    /// <summary>Where a half line from inside a bone leaves it.</summary>
    private static Vec3 Exit(ElbowGeometry g, MeshBones? meshes, int bone, Vec3 from, Vec3 direction)
    {
        var d = direction.Unit;
        float low = 0, high = 14;
        for (var i = 0; i < 30; i++)
        {
            var t = 0.5f * (low + high);
            var p = from + (d * t);
            if ((meshes?.Distance(in g, bone, p) ?? RayIntegrator.BoneDistance(in g, bone, p)) < 0)
            {
                low = t;
            }
            else
            {
                high = t;
            }
        }

        return from + (d * low);
    }
}
