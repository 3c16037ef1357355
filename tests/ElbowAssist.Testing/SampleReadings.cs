using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Testing;

/// <summary>Made-up readings for tests of formats and drawing. Their values are invented, not measured.</summary>
public static class SampleReadings
{
    /// <summary>A lateral with measured, either-side and withheld measurements.</summary>
    public static FilmReading Lateral(LandmarkSource source = LandmarkSource.Model) => Base(View.Lateral) with
    {
        Landmarks = SampleLandmarks.Lateral(source),
        Lines =
        [
            Line("anterior-humeral-line.position", new(374.3, 425), new(-0.011, 1)),
            Line("anterior-humeral-line.shaft.position", new(375.3, 335), new(-0.011, 1)),
            Line("radiocapitellar-line.lateral.neck.offset", new(256.5, 643), new(1, -0.002)),
            Line("radiocapitellar-line.lateral.shaft.offset", new(140, 643), new(1, 0.001)),
            Line("shaft-condylar-angle", new(420.2, 380), new(0.0005, 1)),
        ],
        Circles = [new("capitellum", new(382, 640), 62), new("trochlea", new(388, 636), 74)],
        Measurements =
        [
            Measured("anterior-humeral-line.position", 0.53, "1", 0.44, 0.62) with { Zones = Zones(0.02, 0.96, 0.02) },
            Measured("anterior-humeral-line.shaft.position", 0.61, "1", 0.50, 0.72) with
            {
                State = MeasurementState.EitherSide, Reasons = ["zones-differ"], Zones = Zones(0.01, 0.79, 0.20),
            },
            Measured("radiocapitellar-line.lateral.neck.offset", 0.02, "1", -0.04, 0.08),
            Measured("radiocapitellar-line.lateral.shaft.offset", 0.03, "1", -0.06, 0.12),
            Measured("shaft-condylar-angle", 39.2, "deg", 36.8, 41.6),
            Measured("flexion-angle", 89.5, "deg", 88.1, 90.9),
            Withheld("lateral-capitellohumeral-angle", "deg", "physis-closed"),
            Withheld("ulnohumeral-gap", "mm", "context-not-reduction"),
        ],
        Evidence = [new("fat-pad.anterior", EvidenceState.LookHere, "profile"), new("fat-pad.posterior", EvidenceState.NotAssessable, null)],
        Prompts = [new("trace-radial-head", "Trace the radial head and neck for a step or a kink.", "common practice, no source")],
        Reasons =
        [
            new("zones-differ", "The two constructions of the anterior humeral line fall in different thirds."),
            new("physis-closed", "The capitellar physis is closed, so its ends cannot be laid."),
            new("context-not-reduction", "The gap is measured after a reduction only."),
        ],
    };

    /// <summary>An AP film.</summary>
    public static FilmReading Ap() => Base(View.Ap) with
    {
        Landmarks = SampleLandmarks.Ap(),
        Lines =
        [
            Line("radiocapitellar-line.ap.neck.offset", new(348.5, 732), new(-0.02, -1)),
            Line("radiocapitellar-line.ap.shaft.offset", new(354.5, 865), new(-0.06, -1)),
        ],
        Measurements =
        [
            Measured("radiocapitellar-line.ap.neck.offset", 0.11, "1", 0.05, 0.17),
            Measured("radiocapitellar-line.ap.shaft.offset", 0.18, "1", 0.02, 0.34),
            Withheld("baumann-angle", "deg", "physis-closed"),
            Withheld("carrying-angle", "deg", "extension-not-stated"),
        ],
        Reasons =
        [
            new("physis-closed", "The capitellar physis is closed, so its ends cannot be laid."),
            new("extension-not-stated", "Full extension and supination were not stated by the reader."),
        ],
    };

    /// <summary>A film refused as a whole.</summary>
    public static FilmReading Refused() => Base(View.Unknown) with
    {
        Adequacy = new Adequacy(true, [new("elbow-likelihood", 0.04, 0.5, false, "not-an-elbow")], [], []),
        Reasons = [new("not-an-elbow", "The film does not look like an elbow.")],
    };

    private static FilmReading Base(View view) => new()
    {
        Tool = new ToolIdentity("ElbowAssist", "0.1.0"),
        Models = [new ModelIdentity("lateral", "1.0.0", new string('a', 64))],
        Image = new ImageFacts("sample.png", SampleLandmarks.Width, SampleLandmarks.Height, 0.2, 0.2, "sidecar", new string('0', 64)),
        View = new ViewFinding(view, new Dictionary<string, double>(StringComparer.Ordinal) { ["lateral"] = 0.9, ["ap"] = 0.1 }, 3.5),
        Side = Side.Left,
        Patient = new Patient(412, Sex.Female),
        Context = FilmContext.Acute,
        Adequacy = new Adequacy(
            false,
            [new("exposure", 0.8, 0.5, true, null), new("rotation-degrees", 3.5, 10, true, null)],
            ["anterior-humeral-line.position"],
            [new("ulnar-bow", ["needs-forearm-film"])]),
        Landmarks = [],
        Lines = [],
        Circles = [],
        Measurements = [],
        Evidence = [],
        Prompts = [],
        Reasons = [],
        Timing = new Dictionary<string, double>(StringComparer.Ordinal) { ["decode"] = 12.5, ["measure"] = 0.75 },
    };

    private static NamedLine Line(string name, Point point, Vector direction) =>
        new(name, point, direction.Unit) { Spread = new LineSpread(1.2, 0, 2.5e-4) };

    private static Measurement Measured(string name, double value, string unit, double low, double high) => new()
    {
        Name = name,
        Value = value,
        Unit = unit,
        Redraw95 = new Interval(low, high),
        State = MeasurementState.Measured,
        Reasons = [],
        Zones = null,
        Note = "Made up for a test.",
        Source = "construction of this project",
    };

    private static Measurement Withheld(string name, string unit, string reason) =>
        Measured(name, 0, unit, 0, 0) with { Value = null, Redraw95 = null, State = MeasurementState.Withheld, Reasons = [reason] };

    private static Dictionary<string, double> Zones(double anterior, double middle, double posterior) => new(StringComparer.Ordinal)
    {
        ["capitellum-behind-line"] = 0,
        ["anterior-third"] = anterior,
        ["middle-third"] = middle,
        ["posterior-third"] = posterior,
        ["capitellum-before-line"] = 0,
    };
}
