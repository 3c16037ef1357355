using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Injury;

/// <summary>Breaks and moves the bones of an elbow.</summary>
internal static class InjuryBuilder
{
    /// <summary>Moves the forearm out of the joint, before the radius is placed.</summary>
    public static Frame Forearm(ElbowInjury? injury, Frame forearm)
    {
        if (injury?.Kind == InjuryKind.ElbowDislocation)
        {
            forearm.Origin = forearm.Origin + Shift(injury);
        }

        return forearm;
    }

    /// <summary>How far the head of the radius lies off its place, in the frame of the joint.</summary>
    public static Vec3 RadialHead(ElbowInjury? injury) => injury?.Kind
        is InjuryKind.RadialHeadAnterior or InjuryKind.RadialHeadPosterior or InjuryKind.RadialHeadLateral or InjuryKind.RadialHeadAnteriorWithUlna
        ? Shift(injury)
        : default;

    /// <summary>Breaks the bones.</summary>
    /// <returns>The frame of the humeral shaft against the joint.</returns>
    public static Frame Break(ElbowInjury? injury, float k, ref HumerusGeometry h, ref UlnaGeometry u, ref RadiusGeometry r)
    {
        switch (injury?.Kind)
        {
            case InjuryKind.SupracondylarExtension or InjuryKind.SupracondylarFlexion or InjuryKind.DistalPhysealSeparation or InjuryKind.OldSupracondylar:
                return Supracondylar(injury, k, ref h);
            case InjuryKind.LateralCondyle:
                LateralCondyle(injury, k, ref h);
                break;
            case InjuryKind.MedialEpicondyle:
                MedialEpicondyle(injury, k, ref h);
                break;
            case InjuryKind.CapitellarShear:
                CapitellarShear(injury, ref h);
                break;
            case InjuryKind.RadialNeck or InjuryKind.RadialHead:
                Radius(injury, ref r);
                break;
            case InjuryKind.RadialHeadAnteriorWithUlna:
                UlnarShaft(injury, k, ref u);
                break;
            case InjuryKind.Olecranon or InjuryKind.Coronoid:
                Ulna(injury, k, ref u);
                break;
        }

        return Frame.Identity;
    }

    private static Vec3 Shift(ElbowInjury i) => new((float)i.Forward, (float)-i.Distal, (float)i.Lateral);

    private static BreakGeometry Plane(ElbowInjury i, Vec3 normal, Vec3 through) => new()
    {
        Active = 1,
        Normal1 = normal,
        Offset1 = normal.Dot(through),
        Normal2 = normal,
        Offset2 = normal.Dot(through),
        Roughness = 0.9f,
        Gap = (float)i.Gap,
        Rest = Frame.Identity,
        Fragment = Frame.Identity,
    };

    /// <summary>
    /// The shaft moves, the joint stays where it is. Bending is about the cortex that holds: behind in the extension
    /// type, in front in the flexion type.
    /// </summary>
    private static Frame Supracondylar(ElbowInjury i, float k, ref HumerusGeometry h)
    {
        var separation = i.Kind == InjuryKind.DistalPhysealSeparation;
        var lowest = i.Kind == InjuryKind.OldSupracondylar ? 17 : 12;
        var y = separation ? 9 * k : ((float)(lowest + (9 * i.Level)) * k);
        var tilt = (float)Math.Tan(i.ObliquityDegrees * Math.PI / 180);
        var middle = HumerusField.Axis(in h, y);
        var half = HumerusField.HalfAp(in h, y);
        h.Break = Plane(i, new Vec3(tilt, -1, separation ? 0.15f : 0).Unit, middle);
        if (i.Kind == InjuryKind.OldSupracondylar)
        {
            (h.Break.Healed, h.Break.Gap) = (8 * k, -11 * k);
        }

        var hinge = middle + new Vec3(i.AngleDegrees >= 0 ? -half : half, 0, 0);

        // The fragment's motion against the shaft, then its inverse moves the shaft.
        var bend = Frame.Turn(new Vec3(0, 0, 1), -i.AngleDegrees, hinge);
        var coronal = Frame.Turn(new Vec3(1, 0, 0), -i.CoronalDegrees, middle);
        var turn = Frame.Turn(new Vec3(0, 1, 0), i.RotationDegrees, middle);
        var motion = Frame.Compose(in bend, in coronal);
        motion = Frame.Compose(in motion, in turn);
        motion.Origin = motion.Origin + Shift(i);
        h.Break.Rest = Frame.Inverse(in motion);
        return h.Break.Rest;
    }

    private static void LateralCondyle(ElbowInjury i, float k, ref HumerusGeometry h)
    {
        var through = new Vec3(-6 * k, (float)(12 + (6 * i.Level)) * k, 20 * k);
        h.Break = Plane(i, new Vec3(0.15f, -0.85f, 0.6f).Unit, through);
        h.Break.Normal2 = new Vec3(0, -0.25f, 1).Unit;
        h.Break.Offset2 = h.Break.Normal2.Dot(new Vec3(0, 0, (float)(4 - (5 * i.Level)) * k));
        h.Break.Fragment = Moved(i, h.Capitellum.Centre, new Vec3(0.5f, 0, 1));
    }

    private static void MedialEpicondyle(ElbowInjury i, float k, ref HumerusGeometry h)
    {
        var tip = h.MedialEpicondyle.To;
        if (h.Growth.EpicondyleOpen != 0)
        {
            if (h.Growth.MedialEpicondyle.Exists)
            {
                var moved = Moved(i, h.Growth.MedialEpicondyle.Frame.Origin, new Vec3(1, 0, 0));
                h.Growth.MedialEpicondyle.Frame = Frame.Compose(in moved, in h.Growth.MedialEpicondyle.Frame);
            }

            return;
        }

        var normal = new Vec3(-0.2f, -0.45f, -0.87f).Unit;
        h.Break = Plane(i, normal, tip - (normal * (float)(1 + (4 * i.Level)) * k));
        h.Break.Fragment = Moved(i, tip, new Vec3(1, 0, 0));
    }

    private static void CapitellarShear(ElbowInjury i, ref HumerusGeometry h)
    {
        var c = h.Capitellum.Centre;
        h.Break = Plane(i, new Vec3(0.98f, -0.2f, 0).Unit, c + new Vec3((float)(0.2 + (0.3 * i.Level)) * h.Capitellum.Radii.X, 0, 0));
        h.Break.Normal2 = new Vec3(0, 0, 1);
        h.Break.Offset2 = h.Trochlea.EndZ - (float)(4 * i.Level);
        h.Break.Fragment = Moved(i, c, new Vec3(0, 0, 1));
    }

    private static void Radius(ElbowInjury i, ref RadiusGeometry r)
    {
        var angle = i.RotationDegrees * Math.PI / 180;
        var side = new Vec3(0, (float)Math.Sin(angle), (float)Math.Cos(angle));
        if (i.Kind == InjuryKind.RadialNeck)
        {
            var at = new Vec3((r.Growth.Open != 0 ? r.Growth.Metaphysis + 2 : r.HeadHeight) + (float)(5 * i.Level), 0, 0);
            r.Break = Plane(i, new Vec3(-1, 0, 0) + (side * (float)Math.Tan(i.ObliquityDegrees * Math.PI / 180)), at);
            r.Break.Normal1 = r.Break.Normal2 = r.Break.Normal1.Unit;
            r.Break.Offset1 = r.Break.Offset2 = r.Break.Normal1.Dot(at);

            // The head tips to its side about the edge of the neck there.
            var axis = new Vec3(1, 0, 0).Cross(side);
            var tip = Frame.Turn(axis, -i.AngleDegrees, at + (side * r.Neck.RadiusFrom));
            tip.Origin = tip.Origin + (side * (float)i.Lateral);
            r.Break.Fragment = tip;
            return;
        }

        var inward = (float)(0.1 + (0.5 * i.Level)) * r.HeadY;
        r.Break = Plane(i, (side + new Vec3(-0.25f, 0, 0)).Unit, side * inward);
        r.Break.Normal2 = new Vec3(-1, 0, 0);
        r.Break.Offset2 = -r.HeadHeight - 2;
        var sink = Frame.Turn(new Vec3(1, 0, 0).Cross(side), i.AngleDegrees, side * r.HeadY);
        sink.Origin = sink.Origin + new Vec3((float)i.Distal, 0, 0) + (side * (0.4f * (float)i.Gap));
        r.Break.Fragment = sink;
    }

    private static void UlnarShaft(ElbowInjury i, float k, ref UlnaGeometry u)
    {
        var at = new Vec3((float)(60 + (45 * i.Level)) * k, u.Shaft1.To.Y, u.Shaft1.To.Z);
        u.Break = Plane(i, new Vec3(1, (float)Math.Tan(i.ObliquityDegrees * Math.PI / 180), 0).Unit, at);
        u.Break.Gap = i.AngleDegrees < 12 ? 0.05f : (float)i.Gap;
        u.Break.Fragment = Frame.Turn(new Vec3(0, 0, 1), -i.AngleDegrees, at - new Vec3(0, 6 * k, 0));
    }

    private static void Ulna(ElbowInjury i, float k, ref UlnaGeometry u)
    {
        if (i.Kind == InjuryKind.Olecranon)
        {
            var at = new Vec3((float)(-7 + (12 * i.Level)) * k, -14 * k, u.MiddleZ);
            var slope = (float)Math.Tan((i.ObliquityDegrees + 10) * Math.PI / 180);
            u.Break = Plane(i, new Vec3(-1, slope, 0.15f).Unit, at);
            var open = Frame.Turn(new Vec3(0, 0, 1), i.AngleDegrees, at + new Vec3(0, 4 * k, 0));
            open.Origin = open.Origin + new Vec3((float)i.Distal, 0.15f * (float)-i.Distal, 0);
            u.Break.Fragment = open;
            return;
        }

        var tip = u.Coronoid.To;
        var floor = u.Coronoid.From.Y;
        var cut = tip.Y + u.Coronoid.RadiusTo - ((float)(0.15 + (0.4 * i.Level)) * (tip.Y - floor));
        u.Break = Plane(i, new Vec3(0.35f, 0.9f, 0).Unit, new Vec3(tip.X, cut, 0));
        u.Break.Normal2 = new Vec3(1, 0, 0);
        u.Break.Offset2 = 4 * k;
        var turn = Frame.Turn(new Vec3(0, 0, 1), i.AngleDegrees, new Vec3(tip.X, cut, 0));
        turn.Origin = turn.Origin + new Vec3((float)i.Distal * 0.5f, (float)i.Forward, 0);
        u.Break.Fragment = turn;
    }

    private static Frame Moved(ElbowInjury i, Vec3 through, Vec3 axis)
    {
        var frame = Frame.Turn(axis, i.Kind == InjuryKind.CapitellarShear ? i.AngleDegrees : i.RotationDegrees, through);
        frame.Origin = frame.Origin + Shift(i);
        return frame;
    }
}
