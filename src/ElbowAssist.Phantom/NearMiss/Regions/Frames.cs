using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.NearMiss.Regions;

/// <summary>Where a region is looked at: centre and the usual field of view in adult millimetres.</summary>
internal readonly record struct RegionFrame(Vec3 Centre, float FieldMm);

/// <summary>Small helps for placing bones.</summary>
internal static class Place
{
    public static readonly Vec3 X = new(1, 0, 0);
    public static readonly Vec3 Y = new(0, 1, 0);
    public static readonly Vec3 Z = new(0, 0, 1);

    public static Vec3 At(double x, double y, double z = 0) => new((float)x, (float)y, (float)z);

    /// <summary>A unit vector in the XY plane, degrees from +Y towards +X.</summary>
    public static Vec3 Heading(double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
        return new Vec3((float)sine, (float)cosine, 0);
    }

    /// <summary>Turns about the X axis through a point, degrees from +Y towards +Z.</summary>
    public static Vec3 Flex(Vec3 p, Vec3 through, double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
        var q = p - through;
        return through + new Vec3(q.X, (float)((q.Y * cosine) - (q.Z * sine)), (float)((q.Y * sine) + (q.Z * cosine)));
    }
}
