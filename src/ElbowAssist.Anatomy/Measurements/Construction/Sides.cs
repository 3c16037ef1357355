using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>Signs by anatomy instead of by the film.</summary>
internal static class Sides
{
    /// <summary>The unit normal of a direction on the side that a vector points to.</summary>
    public static Vector NormalToward(Vector direction, Vector side)
    {
        var normal = direction.Unit.Perpendicular;
        return normal.Dot(side) < 0 ? -normal : normal;
    }

    /// <summary>Angle from one direction to another in degrees, positive when it turns toward a side.</summary>
    public static double AngleToward(Vector from, Vector to, Vector side)
    {
        var angle = Angles.Signed(from, to);
        return from.Cross(side) < 0 ? -angle : angle;
    }
}
