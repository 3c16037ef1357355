using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Shape;

/// <summary>
/// Turns the parameters of ulna and radius into surfaces in their pose. Proportions follow measurements on the same
/// public bone as the humerus, and lateral films.
/// </summary>
internal static class ForearmBuilder
{
    /// <summary>
    /// The forearm frame at a flexion: X distal along the ulna, Y to the flexor side, Z lateral; tilted by the valgus
    /// angle against the square to the flexion axis.
    /// </summary>
    public static Frame Forearm(double flexionDegrees, double valgusDegrees)
    {
        var (sin, cos) = Math.SinCos(flexionDegrees * Math.PI / 180);
        var (vs, vc) = Math.SinCos(valgusDegrees * Math.PI / 180);
        return new Frame
        {
            AxisX = new Vec3((float)(vc * sin), (float)(-vc * cos), (float)vs),
            AxisY = new Vec3((float)cos, (float)sin, 0),
            AxisZ = new Vec3((float)(-vs * sin), (float)(vs * cos), (float)vc),
        };
    }

    public static UlnaGeometry Ulna(UlnaShape s, HumerusGeometry h, Frame forearm)
    {
        var k = (float)s.Scale;
        var floor = -(h.Trochlea.GrooveRadius + (float)s.JointGap);
        var back = floor - (float)s.Thickness;
        var reach = (float)s.OlecranonReach;
        var shaft = (float)s.ShaftRadius;
        var middle = (float)s.MiddleZ;
        var rise = (float)Math.Tan(s.DorsalAngleDegrees * 0.5 * Math.PI / 180);
        var apex = new Vec3(46 * k, back + (8.4f * k), middle * 0.75f);
        var far = new Vec3(105 * k, apex.Y + (rise * 59 * k), middle * 0.9f);
        var end = new Vec3((float)s.Length, far.Y + ((float)s.Length * 0.012f), middle * 1.1f);
        var tip = (float)s.CoronoidHeight + floor;
        var (sin, cos) = Math.SinCos(s.ValgusDegrees * Math.PI / 180);
        return new UlnaGeometry
        {
            Forearm = forearm,
            Olecranon = Cone.Of(new Vec3(-reach + (7.9f * k), -14.5f * k, 0), 7.2f * k, new Vec3(10 * k, back + (9.3f * k), 0), 9.3f * k),
            Beak = Cone.Of(new Vec3(-reach + (8 * k), -12 * k, 0), 5.6f * k, new Vec3(-reach + (3 * k), -5.2f * k, 0), 2.6f * k),
            Coronoid = Cone.Of(new Vec3(17 * k, floor - (3 * k), 0), 7.5f * k, new Vec3(-floor + (2.6f * k), tip - (2.2f * k), 0), 2.2f * k),
            CoronoidSlope = Cone.Of(new Vec3(18 * k, floor - (2.5f * k), 0), 7 * k, new Vec3(36 * k, back + (10.5f * k), 0), 7.5f * k),
            Shaft1 = Cone.Of(new Vec3(8 * k, back + (9.3f * k), middle), 9.1f * k, apex, 8.4f * k),
            Shaft2 = Cone.Of(apex, 8.4f * k, far, shaft),
            Shaft3 = Cone.Of(far, shaft, end, 0.72f * shaft),
            MedialFlare = Cone.Of(new Vec3(13.5f * k, floor + (3 * k), middle - (7 * k)), 4.6f * k, new Vec3(25 * k, floor - (6 * k), middle - (2.5f * k)), 6 * k),
            HasSpurs = s.CoronoidSpur + s.OlecranonSpur > 0 ? 1 : 0,
            CoronoidSpur = Spur(new Vec3(-floor + (2.6f * k), tip - (2.2f * k), 0), new Vec3(-0.55f, 0.83f, 0), (float)s.CoronoidSpur, k),
            OlecranonSpur = Spur(new Vec3(-reach + (4.5f * k), -16.5f * k, 0), new Vec3(-0.98f, -0.2f, 0), (float)s.OlecranonSpur, k),
            Trochlea = h.Trochlea,
            JointGap = (float)s.JointGap,
            ValgusCos = (float)cos,
            ValgusSin = (float)sin,
            MiddleZ = middle,
            Flattening = (float)s.Flattening,
            CortexJoint = (float)s.CortexJoint,
            CortexShaft = (float)s.CortexShaft,
            CortexFrom = 14 * k,
            CortexTo = 80 * k,
            SpongyJoint = (float)s.SpongyJoint,
            SpongyShaft = (float)s.SpongyShaft,
            JointBound = Cone.Of(new Vec3(0, -14 * k, middle), 22 * k, new Vec3(32 * k, -14 * k, middle), 21 * k),
            ShaftBound = Cone.Of(new Vec3(32 * k, back + (10 * k), middle * 0.75f), 15 * k, end, 14 * k),
            CoronoidFlattening = 0.5f * (float)s.Flattening,
        };
    }

    private static Cone Spur(Vec3 from, Vec3 direction, float length, float k) =>
        Cone.Of(from, 2.4f * k, from + (direction * (length + 2 + (2.4f * k))), 0.7f * k);

    public static RadiusGeometry Radius(RadiusShape s, HumerusGeometry h, ref UlnaGeometry u, double rotationDegrees, Vec3 headShift)
    {
        var half = (float)s.HeadDiameter / 2;
        var dish = (float)s.DishDepth;
        var curve = 1.35f * (h.Capitellum.Radii.X + (float)s.JointGap);
        var neck = (float)s.NeckDiameter / 2;
        var tuber = (float)s.TuberosityDistance;
        var shaft = (float)s.ShaftDiameter / 2;
        var bend = (float)Math.Tan(s.NeckShaftDegrees * Math.PI / 180);
        var apex = new Vec3(tuber + 95, 0, bend * 97);
        var end = new Vec3((float)s.Length, 0, apex.Z + (((float)s.Length - tuber - 95) * bend * -0.35f));
        var (tilt, along) = Math.SinCos(s.NeckShaftDegrees * 0.45 * Math.PI / 180);
        var swell = (neck * 0.45f) + (float)s.TuberosityHeight;
        var capitellum = Frame.ToLocal(in u.Forearm, h.Capitellum.Centre);
        var axis = new Vec3((float)along, 0, (float)-tilt);
        var supinated = new Frame
        {
            Origin = capitellum + (axis * (h.Capitellum.Radii.X + (float)s.JointGap - dish)) + new Vec3(0, (float)s.HeadForward, (float)s.HeadLateral),
            AxisX = axis,
            AxisY = new Vec3(0, 1, 0),
            AxisZ = new Vec3((float)tilt, 0, (float)along),
        };
        var ulnarHead = u.Shaft3.To;
        var turn = Frame.Turn(ulnarHead - supinated.Origin, -rotationDegrees, supinated.Origin);
        var posed = Frame.Compose(in turn, in supinated);
        var place = posed.Origin;
        u.RadialNotch = place + (posed.AxisX * 5);
        var shift = Frame.DirectionToLocal(in u.Forearm, headShift);
        if (shift.Length > 0)
        {
            posed = Displaced(posed, shift, ulnarHead);
        }

        u.RadialNotchRadius = half + 1.2f;
        u.RadialNotchHalfLength = 8;
        return new RadiusGeometry
        {
            Bone = Frame.Compose(in u.Forearm, in posed),
            HeadY = half,
            HeadZ = half * (float)s.HeadRoundness,
            HeadHeight = (float)s.HeadHeight,
            HeadTaper = (float)s.HeadTaper,
            HeadRounding = (float)s.HeadRounding,
            DishRadius = curve,
            DishAbove = curve - dish,
            Neck = Cone.Of(new Vec3(0.75f * (float)s.HeadHeight, 0, 0), neck, new Vec3(tuber - 7, 0, 0), neck * 1.02f),
            Shaft1 = Cone.Of(new Vec3(tuber - 7, 0, 0), neck * 1.02f, apex, shaft),
            Shaft2 = Cone.Of(apex, shaft, end, shaft * 1.2f),
            Tuberosity = Oval.Of(new Vec3(tuber, 0.25f * neck, -0.5f * neck), new Vec3(0.42f * (float)s.HeadDiameter, swell, swell)),
            CortexJoint = (float)s.CortexJoint,
            CortexShaft = (float)s.CortexShaft,
            CortexFrom = 9,
            CortexTo = 62,
            SpongyJoint = (float)s.SpongyJoint,
            SpongyShaft = (float)s.SpongyShaft,
            Bound1 = Cone.Of(new Vec3(0, 0, 0), half + 2, new Vec3(tuber, 0, 0), neck + (float)s.TuberosityHeight + 4),
            Bound2 = Cone.Of(new Vec3(tuber, 0, 0), neck + (float)s.TuberosityHeight + 4, end, (shaft * 1.2f) + 8),
        };
    }

    /// <summary>The radius with its head shifted; its far end stays with the ulna, so it swings about that.</summary>
    private static Frame Displaced(Frame posed, Vec3 shift, Vec3 farEnd)
    {
        var arm = posed.Origin - farEnd;
        var moved = arm + shift;
        var axis = arm.Cross(moved);
        var degrees = Math.Asin(Math.Min(1, axis.Length / (arm.Length * moved.Length))) * 180 / Math.PI;
        if (axis.Length < 1e-3f)
        {
            posed.Origin = posed.Origin + shift;
            return posed;
        }

        var swing = Frame.Turn(axis, degrees, farEnd);
        var swung = Frame.Compose(in swing, in posed);
        swung.Origin = posed.Origin + shift;
        return swung;
    }
}
