using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Mesh.Registration;

/// <summary>The parametric elbow registered to three meshes.</summary>
/// <param name="Shape">The fitted elbow.</param>
/// <param name="Humerus">Frame of the joint where the meshes lie.</param>
/// <param name="Ulna">Frame of the forearm there.</param>
/// <param name="Radius">Frame of the radius there.</param>
/// <param name="Distances">What is left after fitting, bone by bone.</param>
internal sealed record ElbowRegistration(
    ElbowShape Shape, Frame Humerus, Frame Ulna, Frame Radius, IReadOnlyList<BoneFitDistances> Distances)
{
    /// <summary>How far from the joint the bones are fitted, millimetres: somewhat beyond the farthest landmark.</summary>
    private const float HumerusReach = 115;
    private const float UlnaReach = 120;
    private const float RadiusReach = 75;

    /// <summary>
    /// Fits the humerus, then the ulna to its trochlea, then the radius. The forearm bones are fitted each in its own frame:
    /// how they lie to the humerus follows from the parametric elbow, which closes joint spaces that the files left too wide.
    /// </summary>
    public static ElbowRegistration Of(AssembledBones bones)
    {
        IReadOnlyList<ShapeParameter> ofHumerus = ShapeParameter.Humerus(), ofUlna = ShapeParameter.Ulna(), ofRadius = ShapeParameter.Radius();
        var mean = ShapeParameter.MeanAdult([.. ofHumerus, .. ofUlna, .. ofRadius]);
        var humerus = new BoneRegistration("humerus", ofHumerus, shape =>
        {
            var g = Straight(shape);
            return p => HumerusField.Evaluate(in g.Humerus, p);
        }).Fit(bones.Humerus, [bones.JointFrame()], p => p.Y < HumerusReach, mean);
        var forearm = bones.ForearmFrame(humerus.Frame);
        var ulna = new BoneRegistration("ulna", ofUlna, shape =>
        {
            var g = Straight(shape);
            return p => UlnaField.EvaluateLocal(in g.Ulna, p);
        }).Fit(bones.Ulna, [forearm], p => p.X < UlnaReach, humerus.Shape);
        var head = bones.RadiusFrame(ulna.Frame);
        var radius = new BoneRegistration("radius", ofRadius, shape =>
        {
            var g = Straight(shape);
            return p => RadiusField.EvaluateLocal(in g.Radius, p);
        }).Fit(bones.Radius, Turned(head), p => p.X < RadiusReach, ulna.Shape);
        return new ElbowRegistration(
            radius.Shape, humerus.Frame, ulna.Frame, radius.Frame, [humerus.Distances, ulna.Distances, radius.Distances]);
    }

    /// <summary>The rotation of the forearm is not known.</summary>
    private static List<Frame> Turned(Frame head) =>
        [.. Enumerable.Range(0, 6).Select(i => Frame.Compose(in head, Frame.Turn(new Vec3(1, 0, 0), 60 * i, default)))];

    private static ElbowGeometry Straight(ElbowShape shape) => ElbowBuilder.Build(
        new ElbowCase(0, 35 * 12, Sex.Male, Side.Right, shape),
        ElbowPose.Straight,
        0).Geometry;
}
