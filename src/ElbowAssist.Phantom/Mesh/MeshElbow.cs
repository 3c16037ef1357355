using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Mesh.Registration;
using ElbowAssist.Phantom.Mesh.Rendering;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Mesh;

/// <summary>
/// An adult elbow whose bones are closed surfaces from files. The parametric elbow is fitted to them: it gives the axis that
/// they flex and the forearm that they rotate about, what lies under their surfaces, and the anatomical levels of the
/// landmarks; edges and tips are then found on the surfaces themselves.
/// </summary>
public sealed class MeshElbow
{
    private readonly ElbowShape shape;
    private readonly MeshBones meshes;

    private MeshElbow(ElbowRegistration registration, MeshBones meshes)
    {
        shape = registration.Shape;
        this.meshes = meshes;
        Distances = registration.Distances;
    }

    /// <summary>How far the surfaces lie from the parametric elbow that was fitted to them.</summary>
    public IReadOnlyList<BoneFitDistances> Distances { get; }

    /// <summary>The fitted elbow.</summary>
    internal ElbowShape Shape => shape;

    internal MeshBones Meshes => meshes;

    /// <summary>Registers three bones.</summary>
    /// <param name="bones">Of a right elbow.</param>
    internal static MeshElbow Of(AssembledBones bones)
    {
        var registration = ElbowRegistration.Of(bones);
        return new MeshElbow(registration, new MeshBones(
            In(registration.Humerus, bones.Humerus),
            In(registration.Ulna, bones.Ulna),
            In(registration.Radius, bones.Radius),
            registration.Shape));
    }

    /// <summary>An elbow of a seed: its size, soft tissue and bone density are drawn as those of a parametric adult.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="options">Ages from 18; injuries are not drawn.</param>
    public ElbowCase Sample(ulong seed, SimulationOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var drawn = Simulation.Sample(seed, options with { InjuredShare = 0, Injuries = [] });
        return drawn with
        {
            Shape = shape with
            {
                Humerus = shape.Humerus with
                {
                    CortexShaft = drawn.Shape.Humerus.CortexShaft,
                    CortexDistal = drawn.Shape.Humerus.CortexDistal,
                    SpongyDistal = drawn.Shape.Humerus.SpongyDistal,
                    SpongyShaft = drawn.Shape.Humerus.SpongyShaft,
                },
                Ulna = shape.Ulna with
                {
                    CortexShaft = drawn.Shape.Ulna.CortexShaft,
                    CortexJoint = drawn.Shape.Ulna.CortexJoint,
                    SpongyJoint = drawn.Shape.Ulna.SpongyJoint,
                    SpongyShaft = drawn.Shape.Ulna.SpongyShaft,
                },
                Radius = shape.Radius with
                {
                    CortexShaft = drawn.Shape.Radius.CortexShaft,
                    CortexJoint = drawn.Shape.Radius.CortexJoint,
                    SpongyJoint = drawn.Shape.Radius.SpongyJoint,
                    SpongyShaft = drawn.Shape.Radius.SpongyShaft,
                },
                Soft = drawn.Shape.Soft,
                Growth = null,
            },
            Meshes = meshes,
            Size = drawn.Shape.Humerus.EpicondylarWidth / shape.Humerus.EpicondylarWidth,
        };
    }

    private static TriangleMesh In(Frame frame, TriangleMesh mesh) => mesh.Moved(p => Frame.ToLocal(in frame, p));
}
