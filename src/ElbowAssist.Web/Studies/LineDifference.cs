using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Store.Entries;

namespace ElbowAssist.Web.Studies;

/// <summary>How a line laid by hand differs from the tool's.</summary>
/// <param name="AngleDegrees">Angle between the two, in degrees.</param>
/// <param name="OfCapitellum">Distance of the two beside the capitellum's centre, in diameters of the capitellum.</param>
/// <param name="Millimetres">The same in millimetres, or null without spacing.</param>
internal sealed record LineDifference(double AngleDegrees, double OfCapitellum, double? Millimetres)
{
    /// <summary>The difference from the tool's line of the same name, or null where the tool laid none.</summary>
    public static LineDifference? Of(OwnLineLaid own, FilmReading reading)
    {
        var line = reading.Lines.FirstOrDefault(l => l.Name.StartsWith(own.Name + ".", StringComparison.Ordinal));
        return line is null ? null : Of(own, line.Point, line.Direction, reading);
    }

    /// <summary>The difference from any line, measured on the capitellum of a reading; null where it has none.</summary>
    /// <param name="own">The line laid by hand.</param>
    /// <param name="through">A point of the other line, pixels.</param>
    /// <param name="direction">Its direction.</param>
    /// <param name="reading">The film's reading.</param>
    public static LineDifference? Of(OwnLineLaid own, Point through, Vector direction, FilmReading reading)
    {
        if (Centre(reading) is not ({ } centre, var diameter))
        {
            return null;
        }

        var (sx, sy) = (reading.Image.ColumnSpacingMm ?? 1, reading.Image.RowSpacingMm ?? 1);
        Point Scaled(Point p) => new(p.X * sx, p.Y * sy);
        var ownDirection = (Scaled(own.To) - Scaled(own.From)).Unit;
        var toolDirection = new Vector(direction.X * sx, direction.Y * sy).Unit;
        var at = Scaled(centre);
        // Both lines cross the perpendicular to the tool's line at the centre; the distance is between these crossings.
        var normal = toolDirection.Perpendicular;
        var tool = normal.Dot(Scaled(through) - at);
        var along = ownDirection.Dot(toolDirection);
        if (!(Math.Abs(along) >= 0.2))
        {
            return null; // so does a line whose two points are one
        }

        var from = Scaled(own.From) - at;
        var hand = normal.Dot(from) - (toolDirection.Dot(from) * normal.Dot(ownDirection) / along);
        var angle = Math.Acos(Math.Min(1, Math.Abs(along))) * 180 / Math.PI;
        var distance = Math.Abs(hand - tool);
        return double.IsFinite(distance) ? new(angle, distance / (diameter * sx), reading.Image.ColumnSpacingMm is null ? null : distance) : null;
    }

    private static (Point? Centre, double Diameter) Centre(FilmReading reading)
    {
        if (reading.Circles.FirstOrDefault(c => c.Name == "capitellum") is { } circle)
        {
            return (circle.Centre, 2 * circle.Radius);
        }

        if (reading.View.Name != View.Ap)
        {
            return (null, 0);
        }

        Point? Place(string name) => reading.Landmarks.FirstOrDefault(l => l.Name == name)?.Position;
        return Place(LandmarkNames.CapitellumEdgeLateral) is { } a && Place(LandmarkNames.CapitellumEdgeMedial) is { } b
            ? (Point.Midpoint(a, b), a.DistanceTo(b))
            : (null, 0);
    }
}
