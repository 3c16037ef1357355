using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>A rigid frame: where its origin lies and where its unit axes point, in the frame outside it.</summary>
internal struct Frame
{
    public Vec3 Origin;
    public Vec3 AxisX;
    public Vec3 AxisY;
    public Vec3 AxisZ;

    public static Frame Identity => new()
    {
        AxisX = new Vec3(1, 0, 0),
        AxisY = new Vec3(0, 1, 0),
        AxisZ = new Vec3(0, 0, 1),
    };

    /// <summary>A frame from its origin and two of its axes, which must be square to each other.</summary>
    public static Frame From(Vec3 origin, Vec3 axisX, Vec3 axisY) => new()
    {
        Origin = origin,
        AxisX = axisX,
        AxisY = (axisY - (axisX * axisY.Dot(axisX))).Unit,
        AxisZ = axisX.Cross((axisY - (axisX * axisY.Dot(axisX))).Unit),
    };

    /// <summary>Coordinates inside the frame of a point given outside it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 ToLocal(in Frame f, Vec3 p)
    {
        var q = p - f.Origin;
        return new Vec3(q.Dot(f.AxisX), q.Dot(f.AxisY), q.Dot(f.AxisZ));
    }

    /// <summary>A direction given outside the frame, seen from inside.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 DirectionToLocal(in Frame f, Vec3 d) => new(d.Dot(f.AxisX), d.Dot(f.AxisY), d.Dot(f.AxisZ));

    /// <summary>Coordinates outside the frame of a point given inside it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 ToOuter(in Frame f, Vec3 q) => f.Origin + DirectionToOuter(in f, q);

    /// <summary>A direction given inside the frame, seen from outside.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec3 DirectionToOuter(in Frame f, Vec3 q) => (f.AxisX * q.X) + (f.AxisY * q.Y) + (f.AxisZ * q.Z);

    /// <summary>The frame that stands to <paramref name="outer"/> as <paramref name="inner"/> stands to the world.</summary>
    public static Frame Compose(in Frame outer, in Frame inner) => new()
    {
        Origin = ToOuter(in outer, inner.Origin),
        AxisX = DirectionToOuter(in outer, inner.AxisX),
        AxisY = DirectionToOuter(in outer, inner.AxisY),
        AxisZ = DirectionToOuter(in outer, inner.AxisZ),
    };

    /// <summary>The frame of the outside as seen from inside.</summary>
    public static Frame Inverse(in Frame f)
    {
        var frame = new Frame
        {
            AxisX = new Vec3(f.AxisX.X, f.AxisY.X, f.AxisZ.X),
            AxisY = new Vec3(f.AxisX.Y, f.AxisY.Y, f.AxisZ.Y),
            AxisZ = new Vec3(f.AxisX.Z, f.AxisY.Z, f.AxisZ.Z),
        };
        frame.Origin = -DirectionToOuter(in frame, f.Origin);
        return frame;
    }

    /// <summary>A turn about an axis through a point, degrees, by the right-hand rule.</summary>
    public static Frame Turn(Vec3 axis, double degrees, Vec3 through)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var u = axis.Unit;
        Vec3 Rotate(Vec3 v) =>
            (v * (float)cos) + (u.Cross(v) * (float)sin) + (u * (u.Dot(v) * (float)(1 - cos)));
        var frame = new Frame
        {
            AxisX = Rotate(new Vec3(1, 0, 0)),
            AxisY = Rotate(new Vec3(0, 1, 0)),
            AxisZ = Rotate(new Vec3(0, 0, 1)),
        };
        frame.Origin = through - Rotate(through);
        return frame;
    }
}
