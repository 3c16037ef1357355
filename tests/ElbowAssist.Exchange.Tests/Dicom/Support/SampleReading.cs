using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Tests.Dicom.Support;

/// <summary>Invented readings of every shape a reading can take: views, sides, states, spacing, refusals, who laid what.</summary>
internal static class SampleReading
{
    private static readonly (string Name, string Unit, int Lines)[] Lateral =
    [
        ("anterior-humeral-line.position", "1", 1),
        ("anterior-humeral-line.shaft.position", "1", 1),
        ("radiocapitellar-line.lateral.neck.offset", "1", 1),
        ("radiocapitellar-line.lateral.shaft.offset", "1", 1),
        ("radiocapitellar-ratio", "1", 1),
        ("shaft-condylar-angle", "deg", 2),
        ("lateral-capitellohumeral-angle", "deg", 2),
        ("flexion-angle", "deg", 2),
        ("radial-neck-shaft-angle", "deg", 2),
        ("ulnohumeral-gap", "mm", 0),
        ("fat-pad.anterior.angle", "deg", 2),
        ("true-lateral.arc-offset", "1", 0),
        ("ulnar-bow", "mm", 0),
    ];

    private static readonly (string Name, string Unit, int Lines)[] Ap =
    [
        ("radiocapitellar-line.ap.neck.offset", "1", 1),
        ("radiocapitellar-line.ap.shaft.offset", "1", 1),
        ("baumann-angle", "deg", 2),
        ("carrying-angle", "deg", 2),
        ("radial-neck-shaft-angle", "deg", 2),
    ];

    /// <summary>A reading by seed; seeds that leave 4 over 5 are refused.</summary>
    public static FilmReading Of(int seed, int width = 560, int height = 720)
    {
        var random = new Random(seed);
        var refused = seed % 5 == 4;
        var view = refused && seed % 2 == 0 ? View.Unknown : random.Next(2) == 0 ? View.Lateral : View.Ap;
        var spacing = random.Next(3) > 0 ? 0.1 + (0.1 * random.NextDouble()) : (double?)null;
        var measurements = refused ? [] : Measurements(view == View.Lateral ? Lateral : Ap, spacing, random);
        return new()
        {
            Tool = new("ElbowAssist", "0.1.0"),
            Models = random.Next(4) == 0 ? [] : [new("view", "1.0.0", new string('a', 64)), new(view == View.Ap ? "ap" : "lateral", "1.0.0", new string('b', 64))],
            Image = new("film.dcm", width, height, spacing, spacing, spacing is null ? "none" : "dicom: Pixel Spacing, calibrated by geometry", new string('c', 64)),
            View = new(view, new Dictionary<string, double>(StringComparer.Ordinal), random.NextDouble() * 10),
            Side = (Side)random.Next(3),
            Patient = new(random.Next(12, 900), (Sex)random.Next(2)),
            Context = FilmContext.Acute,
            Adequacy = new(refused, [new("view", 0.2, 0.5, !refused, refused ? "view-not-recognised" : null)], [.. measurements.Where(m => m.Value is not null).Select(m => m.Name)], []),
            Landmarks = refused ? [] : Landmarks(view, width, height, random),
            Lines = [.. measurements.Where(m => m.Value is not null).SelectMany(m => Lines(m.Name, width, height, random))],
            Circles = refused || view == View.Ap ? [] : [new("capitellum", new Point(width * 0.5, height * 0.6), width * 0.08)],
            Measurements = measurements,
            Evidence = refused ? [] : [new("fat-pad.anterior", (EvidenceState)random.Next(2), null), new("fat-pad.posterior", EvidenceState.NotAssessable, null)],
            Prompts = [new("look-at-cortices", "Trace every cortex.", "common practice")],
            Reasons = refused
                ? [new("view-not-recognised", "The view was not recognised: the film may be rotated, or the distal humerus may be; look for a fracture before blaming the view.")]
                : [new("needs-forearm-film", "It needs a forearm film."), new("interval-crosses-limit", "The redraw interval lies on both sides of a limit of 5°.")],
            Timing = new Dictionary<string, double>(StringComparer.Ordinal),
        };
    }

    private static List<Measurement> Measurements((string Name, string Unit, int Lines)[] all, double? spacing, Random random) =>
        [.. all.Select(m =>
        {
            var withheld = m.Name == "ulnar-bow" || (m.Unit == "mm" && spacing is null) || random.Next(4) == 0;
            var value = m.Unit == "1" ? random.NextDouble() : 10 + (40 * random.NextDouble());
            var half = m.Unit == "1" ? 0.1 : 4;
            return new Measurement
            {
                Name = m.Name,
                Unit = m.Unit,
                Value = withheld ? null : value,
                Redraw95 = withheld ? null : new(value - half, value + (half * random.NextDouble())),
                State = withheld ? MeasurementState.Withheld : (MeasurementState)random.Next(2),
                Reasons = withheld ? ["needs-forearm-film"] : [],
                Zones = null,
                Note = "Construction.",
                Source = "construction of this project",
            };
        })];

    private static List<Landmark> Landmarks(View view, int width, int height, Random random) =>
        [.. LandmarkSet.Of(view)!.Landmarks.Select(l =>
        {
            var visible = random.Next(6) > 0;
            var spread = random.Next(8) > 0
                ? new Covariance(1 + (6 * random.NextDouble()), random.NextDouble() - 0.5, 1 + (6 * random.NextDouble()))
                : (Covariance?)null;
            return new Landmark(
                l.Name,
                l.Kind,
                visible ? new Point(width * (0.1 + (0.8 * random.NextDouble())), height * (0.1 + (0.8 * random.NextDouble()))) : null,
                visible ? spread : null,
                visible ? 0.5 + (0.5 * random.NextDouble()) : 0.05,
                (LandmarkSource)(random.Next(5) == 0 ? 1 : 0));
        })];

    private static IEnumerable<NamedLine> Lines(string name, int width, int height, Random random)
    {
        var count = Lateral.Concat(Ap).First(m => m.Name == name).Lines;
        for (var i = 0; i < count; i++)
        {
            var angle = random.NextDouble() * Math.PI;
            yield return new(name, new Point(width * 0.5, height * 0.5), new Vector(Math.Cos(angle), Math.Sin(angle)))
            {
                Spread = random.Next(4) > 0 ? new LineSpread(2, 0.001, 0.0001) : null,
            };
        }
    }
}
