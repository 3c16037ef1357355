using ElbowAssist.Phantom.Rendering.Field;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Growth;

/// <summary>Places physes and ossification centres on the bones of a child.</summary>
internal static class GrowthBuilder
{
    public static HumerusGrowth Humerus(GrowthState s, HumerusShape shape, HumerusGeometry h)
    {
        var k = (float)(shape.EpicondylarWidth / 63.9);
        var (sinTilt, cosTilt) = Math.SinCos(s.PhysisTiltDegrees * Math.PI / 180);
        var slope = Math.Tan(s.PhysisSlopeDegrees * Math.PI / 180);
        var medialSlope = Math.Tan(s.MedialSlopeDegrees * Math.PI / 180);
        var lateral = new Vec3((float)sinTilt, (float)-cosTilt, (float)(cosTilt * slope)).Unit;
        var medial = new Vec3(0.5f * (float)sinTilt, (float)-cosTilt, (float)(cosTilt * medialSlope)).Unit;
        var diameter = (float)s.CartilageDiameter;
        var centre = h.Capitellum.Centre;
        var onPhysis = centre - (lateral * (0.4f * diameter));
        var junctionZ = h.Trochlea.LateralLipZ + (2 * k);
        var junction = onPhysis + new Vec3(0, (float)slope * (junctionZ - onPhysis.Z), junctionZ - onPhysis.Z);
        var epicondyle = new Vec3(-0.25f, -0.55f, -0.8f).Unit;
        var g = new HumerusGrowth
        {
            Stage = s.JointBlockFused ? 0 : s.Composite ? 2 : 1,
            EpicondyleOpen = s.MedialEpicondyleFused ? 0 : 1,
            LateralNormal = lateral,
            LateralOffset = lateral.Dot(onPhysis),
            MedialNormal = medial,
            MedialOffset = medial.Dot(junction),
            EpicondyleNormal = epicondyle,
            EpicondyleOffset = epicondyle.Dot(h.MedialEpicondyle.To) - (3.5f * k),
            Gap = (float)s.PhysisGap,
        };
        if (g.Stage == 1)
        {
            Nuclei(ref g, s, h, lateral, onPhysis, k);
        }

        if (g.EpicondyleOpen != 0 && s.MedialEpicondyle > 0)
        {
            var size = (float)s.MedialEpicondyle;
            var along = new Vec3(-0.2f, -0.8f, 0.55f).Unit;
            var middle = h.MedialEpicondyle.To + (epicondyle * (0.8f * k));
            g.MedialEpicondyle = Nucleus.Of(
                Frame.From(middle, epicondyle, along), new Vec3(4.5f, 8f, 5.5f) * (k * size), -1.5f * k * size);
        }

        return g;
    }

    public static UlnaGrowth Ulna(GrowthState s, UlnaShape shape, UlnaGeometry u)
    {
        if (s.OlecranonFused)
        {
            return default;
        }

        var k = (float)shape.Scale;
        var normal = new Vec3(-0.93f, 0.36f, 0).Unit;
        var tip = normal.Dot(u.Beak.To) + u.Beak.RadiusTo;
        var g = new UlnaGrowth { Open = 1, Normal = normal, Offset = tip - (float)s.OlecranonCap };
        if (s.Olecranon > 0)
        {
            var size = (float)s.Olecranon;
            var thick = MathF.Min(0.36f * (float)s.OlecranonCap, 2.8f * size);
            var middle = new Vec3((float)-shape.OlecranonReach + (6f * k), -13.5f * k, (float)shape.MiddleZ);
            var onPlane = middle + (normal * (g.Offset - normal.Dot(middle) + 1.6f + thick));
            var across = new Vec3(0.36f, 0.93f, 0).Unit;
            g.First = Nucleus.Of(Frame.From(onPlane - (across * (2f * k * (1 - size))), normal, across), new Vec3(thick, 7f * k * size, 6.5f * k * size), -10);
            if (s.OlecranonSplit)
            {
                g.Second = Nucleus.Of(
                    Frame.From(onPlane + (across * (7.5f * k)) + (normal * 0.5f), normal, across),
                    new Vec3(0.7f * thick, 2.4f * k * size, 3f * k * size),
                    -10);
            }
        }

        return g;
    }

    public static RadiusGrowth Radius(GrowthState s, RadiusShape shape)
    {
        if (s.RadialHeadFused)
        {
            return default;
        }

        var g = new RadiusGrowth { Open = 1, Metaphysis = (float)s.RadialHeadHeight };
        if (s.RadialHeadShare > 0)
        {
            var thickness = Math.Min(s.RadialHeadThickness, s.RadialHeadHeight - s.RadialPhysisGap - 0.6);
            g.DiscHalf = (float)thickness / 2;
            g.DiscMiddle = (float)(s.RadialHeadHeight - s.RadialPhysisGap - (thickness / 2));
            g.DiscRadius = (float)(s.RadialHeadShare * shape.HeadDiameter / 2);
        }

        return g;
    }

    private static void Nuclei(ref HumerusGrowth g, GrowthState s, HumerusGeometry h, Vec3 axis, Vec3 onPhysis, float k)
    {
        if (s.CapitellumDiameter > 0)
        {
            var forward = new Vec3(0, 1, 0);
            forward = (forward - (axis * forward.Dot(axis))).Unit;
            var height = (float)s.CapitellumHeight;
            var below = height * (0.5f - (0.28f * (float)s.CapitellumFlatness));
            var frame = Frame.From(
                onPhysis + (axis * (g.Gap + below)) + (forward * (float)s.CapitellumForward) - new Vec3(0, 0, (float)s.CapitellumMedial),
                axis,
                forward);
            g.Capitellum = Nucleus.Of(
                frame, new Vec3(height - below, (float)s.CapitellumDiameter / 2, (float)s.CapitellumWidth / 2), -below);
        }

        if (s.Trochlea > 0)
        {
            var size = (float)s.Trochlea * k;
            var at = g.Gap + (4.5f * size);
            g.Trochlea1 = Crumb(g, new Vec3(1.5f * k, 0, h.Trochlea.GrooveZ), at, new Vec3(4.2f, 5f, 5f) * size);
            g.Trochlea2 = Crumb(g, new Vec3(2.5f * k, 0, h.Trochlea.GrooveZ - (6.5f * k)), at + (0.6f * k), new Vec3(3f, 3.6f, 3.4f) * size);
            if (s.Trochlea > 0.55)
            {
                g.Trochlea3 = Crumb(g, new Vec3(0, 0, h.Trochlea.MedialLipZ), at, new Vec3(3.4f, 4.4f, 3f) * size);
            }
        }

        if (s.LateralEpicondyle > 0)
        {
            var size = (float)s.LateralEpicondyle * k;
            var middle = h.LateralEpicondyle.To + new Vec3(0, -1.5f * k, 3.2f * k);
            g.LateralEpicondyle = Nucleus.Of(
                Frame.From(middle, new Vec3(0, -0.45f, 0.9f).Unit, new Vec3(0, 0.9f, 0.45f).Unit), new Vec3(1.3f, 4.5f, 3f) * size, -10);
        }
    }

    private static Nucleus Crumb(HumerusGrowth g, Vec3 place, float beyond, Vec3 radii)
    {
        var normal = g.MedialNormal;
        var middle = place + (normal * (g.MedialOffset + beyond - normal.Dot(place)));
        var forward = new Vec3(1, 0, 0);
        return Nucleus.Of(Frame.From(middle, normal, (forward - (normal * forward.Dot(normal))).Unit), radii, -0.8f * radii.X);
    }
}
