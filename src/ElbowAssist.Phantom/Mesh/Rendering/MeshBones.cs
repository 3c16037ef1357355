using ElbowAssist.Phantom.Mesh.Registration;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Mesh.Rendering;

/// <summary>
/// Surfaces that stand in for those of a parametric elbow: each in the frame of its own bone (joint, forearm, radius), so
/// that it moves with flexion and forearm rotation as the parametric bone does.
/// </summary>
internal sealed class MeshBones
{
    private const float GridStep = 0.45f;
    private const float GridMargin = 4;
    private const float NearTip = 7;
    private readonly TriangleMesh[] meshes;
    private readonly DistanceGrid[] surfaces;

    /// <param name="humerus">In the frame of the joint.</param>
    /// <param name="ulna">In the frame of the forearm.</param>
    /// <param name="radius">In the frame of the radius.</param>
    /// <param name="fitted">The elbow that was fitted to them.</param>
    public MeshBones(TriangleMesh humerus, TriangleMesh ulna, TriangleMesh radius, ElbowShape fitted)
    {
        meshes = [humerus, ulna, radius];
        surfaces = [.. meshes.Select(m => DistanceGridBuilder.Build(m, GridStep, GridMargin))];
        Levels = MeshLevels.Of(humerus, surfaces[0], fitted.Humerus);
    }

    /// <summary>Levels of the humerus.</summary>
    public MeshLevels Levels { get; }

    /// <summary>Surface of a bone (0 humerus, 1 ulna, 2 radius) in its own frame.</summary>
    public DistanceGrid Surface(int bone) => surfaces[bone];

    /// <summary>The point of a bone near a place that reaches farthest in a direction; all in the frame of the joint.</summary>
    public Vec3 Tip(in ElbowGeometry g, int bone, Vec3 place, Vec3 direction)
    {
        var near = ToBone(in g, bone, place);
        var along = DirectionToBone(in g, bone, direction);
        var tip = meshes[bone].Vertices.Where(p => (p - near).Length < NearTip).OrderByDescending(along.Dot).FirstOrDefault(near);
        return bone switch
        {
            0 => tip,
            1 => Frame.ToOuter(in g.Ulna.Forearm, tip),
            _ => Frame.ToOuter(in g.Radius.Bone, tip),
        };
    }

    /// <summary>Signed distance to a bone at a point given in the frame of the joint.</summary>
    public float Distance(in ElbowGeometry g, int bone, Vec3 p) => Surface(bone).At(ToBone(in g, bone, p));

    /// <summary>A point of the joint's frame in the frame of a bone.</summary>
    public static Vec3 ToBone(in ElbowGeometry g, int bone, Vec3 p) => bone switch
    {
        0 => p,
        1 => Frame.ToLocal(in g.Ulna.Forearm, p),
        _ => Frame.ToLocal(in g.Radius.Bone, p),
    };

    /// <summary>A direction of the joint's frame in the frame of a bone.</summary>
    public static Vec3 DirectionToBone(in ElbowGeometry g, int bone, Vec3 d) => bone switch
    {
        0 => d,
        1 => Frame.DirectionToLocal(in g.Ulna.Forearm, d),
        _ => Frame.DirectionToLocal(in g.Radius.Bone, d),
    };
}
