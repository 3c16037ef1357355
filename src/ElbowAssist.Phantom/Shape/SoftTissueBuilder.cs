using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Shape;

/// <summary>Turns the parameters of skin, fat, fat pads and cast into surfaces around the posed bones.</summary>
internal static class SoftTissueBuilder
{
    public static SoftTissueGeometry Build(SoftTissueShape s, HumerusGeometry h, UlnaGeometry u, float roof, float scale)
    {
        var cover = (float)s.OlecranonCover;
        var middle = h.ShaftX + (14 * scale);
        var forearm = (float)s.ForearmRadius;
        var soft = new SoftTissueGeometry
        {
            Forearm = u.Forearm,
            UpperArm = Cone.Of(
                new Vec3(middle, 8 * scale, 0),
                (float)s.ArmRadiusJoint,
                new Vec3(middle + (2 * scale), 170 * scale, 0),
                (float)s.ArmRadiusUpper),
            Joint = Cone.Of(
                h.MedialEpicondyle.To,
                h.MedialEpicondyle.RadiusTo + (0.5f * cover) + 3,
                h.LateralEpicondyle.To,
                h.LateralEpicondyle.RadiusTo + (0.5f * cover) + 4),
            OlecranonCover = Cone.Of(
                new Vec3(u.Olecranon.From.X, u.Olecranon.From.Y, u.MiddleZ),
                u.Olecranon.RadiusFrom + cover,
                u.Shaft1.To,
                u.Shaft1.RadiusFrom + cover),
            ForearmProximal = Cone.Of(new Vec3(10 * scale, -2 * scale, 5 * scale), 0.88f * forearm, new Vec3(70 * scale, 0, 4 * scale), forearm),
            ForearmDistal = Cone.Of(new Vec3(70 * scale, 0, 4 * scale), forearm, new Vec3(230 * scale, -6 * scale, 5 * scale), (float)s.WristRadius),
            Oval = (float)s.Flattening,
            Blend = 24 * scale,
            Skin = (float)s.Skin,
            FatLayer = (float)s.FatLayer,
            Marbling = (float)s.Marbling,
            AnteriorPad = AnteriorPad(s, h, scale),
            PosteriorPad = PosteriorPad(s, h, roof, scale),
        };
        if (s.CastThickness > 0)
        {
            soft.CastInner = (float)s.CastPadding;
            soft.CastOuter = (float)(s.CastPadding + s.CastThickness);
            soft.CastNormal = (new Vec3(1, 0, 0) + u.Forearm.AxisY).Unit;
            soft.CastOffset = s.CastIsSlab ? -8 * scale : 1000;
            soft.CastMesh = (float)s.CastMesh;
        }

        return soft;
    }

    /// <summary>The anterior pad lies on the shaft above the coronoid fossa and hangs over it; an effusion lifts its free end.</summary>
    private static FatPadGeometry AnteriorPad(SoftTissueShape s, HumerusGeometry h, float scale)
    {
        var bottom = h.CoronoidFossa.Centre.Y + (1 * scale);
        var top = bottom + (float)s.AnteriorPadLength;
        var start = Front(h, top) + new Vec3(0.25f * (float)s.AnteriorPadThickness, 0, 0);
        var end = Front(h, bottom) + new Vec3((0.25f * (float)s.AnteriorPadThickness) + (float)s.AnteriorPadLift, 0, 0);
        return Pad(start, end, (float)s.AnteriorPadThickness / 2, 10 * scale);
    }

    private static FatPadGeometry PosteriorPad(SoftTissueShape s, HumerusGeometry h, float roof, float scale)
    {
        var lift = MathF.Max((float)s.PosteriorPadLift, 0);
        var o = h.OlecranonFossa;
        var back = o.Centre.X + (2 * scale);
        var start = new Vec3(back + (2 * scale) - (0.7f * lift), roof + (3 * scale), o.Centre.Z);
        var end = new Vec3(back + (3 * scale) - lift, roof - (15 * scale), o.Centre.Z);
        return Pad(start, end, 3.2f * scale, 9 * scale);
    }

    private static Vec3 Front(HumerusGeometry h, float y)
    {
        var c = HumerusField.Axis(in h, y);
        return new Vec3(c.X + HumerusField.HalfAp(in h, y), y, h.CoronoidFossa.Centre.Z + 2);
    }

    private static FatPadGeometry Pad(Vec3 start, Vec3 end, float halfThickness, float halfWidth)
    {
        var along = (end - start).Unit;
        var across = new Vec3(0, 0, 1);
        return new FatPadGeometry
        {
            Frame = new Frame { Origin = (start + end) * 0.5f, AxisX = along, AxisY = across.Cross(along), AxisZ = across },
            Radii = new Vec3((end - start).Length / 2, halfThickness, halfWidth),
        };
    }
}
