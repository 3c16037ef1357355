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
        var tool = new Line(Scaled(through), new Vector(direction.X * sx, direction.Y * sy));
        return LineGap.Between(Line.Through(Scaled(own.From), Scaled(own.To)), tool, Scaled(centre)) is { } gap
            ? new(gap.AngleDegrees, gap.Offset / (diameter * sx), reading.Image.ColumnSpacingMm is null ? null : gap.Offset)
            : null;
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
