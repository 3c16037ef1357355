using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Truth;

/// <summary>The locator points of a posed elbow.</summary>
internal static class LocatorTruth
{
    /// <summary>On the plane of the joint, millimetres.</summary>
    public static LocatorPoints Plane(PosedElbow elbow, FilmCamera camera, View view)
    {
        var bones = new BoneSurfaces(elbow);
        var w = elbow.Points.UnitW;
        var ulna = bones.UlnaMiddle(4 * w);
        var head = elbow.Geometry.Radius.Bone.Origin.Length;
        var radius = bones.RadiusMiddle((4 * w) - MathF.Min(head, 2 * w));
        return new LocatorPoints(
            camera.ToPlane(bones.ShaftMiddle(2 * w)),
            camera.ToPlane(default),
            camera.ToPlane((ulna + radius) * 0.5f),
            camera.ToPlane(view == View.Lateral ? elbow.Points.OlecranonTip : elbow.Points.MedialEpicondyle));
    }
}
