using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>
/// A ruler of the capitellum's thirds, square to the anterior humeral line and outside all bone, with the place where the
/// line crosses it. Left out where it would not fit on the film.
/// </summary>
internal static class ThirdsRuler
{
    public const string MeasurementName = "anterior-humeral-line.position";

    public static IReadOnlyList<Mark> Of(FilmReading reading, LineMarks line, FilmScale scale, LaidPlaces places)
    {
        var measurement = reading.Measurements.FirstOrDefault(m => m.Name == MeasurementName);
        var capitellum = reading.Circles.FirstOrDefault(c => c.Name == "capitellum");
        if (measurement?.Value is not { } value || capitellum is null)
        {
            return [];
        }

        var axis = line.Line;
        var across = axis.Direction.Perpendicular;
        var posterior = across * (places.TowardPosterior(across) ? 1 : -1);
        var diameter = 2 * capitellum.Radius;
        var (nearest, furthest) = VisibleRuns.Span(axis, places.All, 0);
        var towardJoint = axis.Direction.Dot(capitellum.Centre - axis.Point) > 0;
        var centre = axis.Direction.Dot(capitellum.Centre - axis.Point);
        var clearance = Clearance(places, capitellum);
        var at = axis.Point + (axis.Direction * (towardJoint
            ? Math.Max(furthest + (30 * scale.Unit), centre + clearance)
            : Math.Min(nearest - (30 * scale.Unit), centre - clearance)));
        Point Place(double position) => at + (posterior * ((position - value) * diameter));
        if (!scale.Holds(Place(-0.1)) || !scale.Holds(Place(1.1)))
        {
            return [];
        }

        var unit = scale.Unit;
        var up = axis.Direction * (towardJoint ? -1 : 1);
        var marks = new List<Mark> { Solid([Place(0), Place(1)]) };
        for (var i = 0; i <= 3; i++)
        {
            var tick = Place(i / 3.0);
            marks.Add(Solid([tick - (up * (5 * unit)), tick + (up * (5 * unit))]));
        }

        marks.Add(new Stroke([Place(value) + (up * (4 * unit)), Place(value) + (up * (18 * unit))], line.Style.Ink, 2 * unit, []));
        marks.AddRange(Captions(Place, up, unit));
        return marks;

        Stroke Solid(IReadOnlyList<Point> points) => new(points, Ink.Words, 1.1 * unit, []);
    }

    // Where the ulna's posterior border is not laid it is taken to end within this distance, seen on simulated films.
    private static double Clearance(LaidPlaces places, NamedCircle capitellum) => Math.Max(
        3.4 * capitellum.Radius,
        1.9 * (Scrutiny.ShaftWidth(places, LandmarkNames.HumerusAnterior, LandmarkNames.HumerusPosterior, 5) ?? 0));

    private static IEnumerable<Mark> Captions(Func<double, Point> place, Vector up, double unit)
    {
        var size = 11 * unit;
        foreach (var (position, drop, text) in new[] { (0.0, 18, "front"), (1.0, 18, "back"), (0.5, 31, "capitellum in thirds") })
        {
            var at = place(position) - (up * (drop * unit));
            yield return new Words(new Point(at.X - (Words.WidthOf(text, size) / 2), at.Y), text, size, Ink.Words);
        }
    }
}
