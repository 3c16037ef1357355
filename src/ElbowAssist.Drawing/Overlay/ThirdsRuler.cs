using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Drawing.Marks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>
/// A ruler of the capitellum's thirds, square to the anterior humeral line and outside all bone, with the place where the
/// line crosses it. Left out where it or its words would not fit on the film.
/// </summary>
internal static class ThirdsRuler
{
    public const string MeasurementName = "anterior-humeral-line.position";

    public static IReadOnlyList<Mark> Of(FilmReading reading, LineMarks line, FilmScale scale, LaidPlaces places, bool large)
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
        var captions = Captions(Place, up, unit, large);
        if (!captions.TrueForAll(Fits))
        {
            return [];
        }

        marks.AddRange(captions);
        return marks;

        bool Fits(Words words) =>
            scale.Holds(new Point(words.At.X, words.At.Y - words.Size)) &&
            scale.Holds(new Point(words.At.X + Words.WidthOf(words.Text, words.Size), words.At.Y + (words.Size / 4)));

        Stroke Solid(IReadOnlyList<Point> points) => new(points, Ink.Words, 1.1 * unit, []);
    }

    // Where the ulna's posterior border is not laid it is taken to end within this distance, seen on simulated films.
    private static double Clearance(LaidPlaces places, NamedCircle capitellum) => Math.Max(
        3.4 * capitellum.Radius,
        1.9 * (Scrutiny.ShaftWidth(places, LandmarkNames.HumerusAnterior, LandmarkNames.HumerusPosterior, 5) ?? 0));

    // "front" and "back" move outward along the ruler, and what the ruler is moves away from it, until no words overlap.
    private static List<Words> Captions(Func<double, Point> place, Vector up, double unit, bool large)
    {
        var size = (large ? 24 : 11) * unit;
        var drop = (7 * unit) + size;
        var (front, back) = (At("front", 0, drop), At("back", 1, drop));
        for (var outward = 0.05; Overlap(front, back) && outward < 2; outward += 0.05)
        {
            (front, back) = (At("front", -outward, drop), At("back", 1 + outward, drop));
        }

        if (large)
        {
            return [front, back];
        }

        var what = At("capitellum in thirds", 0.5, drop);
        for (var further = drop; Overlap(what, front) || Overlap(what, back); further += size / 4)
        {
            what = At("capitellum in thirds", 0.5, further);
        }

        return [front, back, what];

        Words At(string text, double position, double away)
        {
            var at = place(position) - (up * away);
            return new Words(new Point(at.X - (Words.WidthOf(text, size) / 2), at.Y + (0.35 * size)), text, size, Ink.Words);
        }

        bool Overlap(Words a, Words b) =>
            Math.Abs(a.At.Y - b.At.Y) < 1.25 * size &&
            a.At.X < b.At.X + Words.WidthOf(b.Text, size) + (0.5 * size) && b.At.X < a.At.X + Words.WidthOf(a.Text, size) + (0.5 * size);
    }
}
