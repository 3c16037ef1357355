namespace ElbowAssist.Geometry;

/// <summary>How far two lines are apart beside a point: the angle between them, and the distance where they cross the perpendicular to the second.</summary>
/// <param name="AngleDegrees">0 to 90, in degrees; the way the lines run does not count.</param>
/// <param name="Offset">Distance between the crossings, in the unit of the points.</param>
public readonly record struct LineGap(double AngleDegrees, double Offset)
{
    /// <summary>Cosine of the angle from which on two lines cannot be compared beside a point.</summary>
    private const double LeastAlong = 0.2;

    /// <summary>The gap of two lines; null where they run across each other, or a line has no direction.</summary>
    /// <param name="one">One line.</param>
    /// <param name="other">The line whose perpendicular is taken.</param>
    /// <param name="at">The point that the perpendicular goes through.</param>
    public static LineGap? Between(in Line one, in Line other, Point at)
    {
        var (direction, along) = (one.Direction.Unit, other.Direction.Unit);
        var normal = along.Perpendicular;
        var cosine = direction.Dot(along);
        if (!(Math.Abs(cosine) >= LeastAlong))
        {
            return null;
        }

        var from = one.Point - at;
        var crossing = normal.Dot(from) - (along.Dot(from) * normal.Dot(direction) / cosine);
        var offset = Math.Abs(crossing - normal.Dot(other.Point - at));
        return double.IsFinite(offset) ? new LineGap(Math.Acos(Math.Min(1, Math.Abs(cosine))) * 180 / Math.PI, offset) : null;
    }
}
