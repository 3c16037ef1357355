using ElbowAssist.Anatomy;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Reading.Tests.Studies;

/// <summary>Films for study tests, with only what a study looks at.</summary>
internal static class Film
{
    public static ToolIdentity Tool { get; } = new("ElbowAssist", "0.0.0");

    public static StudyFilm Of(
        string id, View view, Side side, FilmContext context = FilmContext.Acute, Patient? patient = null, params Measurement[] measurements) =>
        new(id, Reading(id, view, side, context, patient ?? new(72, Sex.Female), measurements), []);

    public static Measurement Measured(string name, double value, double half, string unit = "deg") => new()
    {
        Name = name,
        Value = value,
        Unit = unit,
        Redraw95 = new(value - half, value + half),
        State = MeasurementState.Measured,
        Reasons = [],
        Zones = null,
        Note = "",
        Source = "construction of this project",
    };

    public static Measurement Withheld(string name) => new()
    {
        Name = name,
        Value = null,
        Unit = "deg",
        Redraw95 = null,
        State = MeasurementState.Withheld,
        Reasons = ["levels-off-film"],
        Zones = null,
        Note = "",
        Source = "construction of this project",
    };

    public static Study Study(params StudyFilm[] films) => StudyAssembler.Assemble(new() { Tool = Tool, Films = films });

    private static FilmReading Reading(string id, View view, Side side, FilmContext context, Patient patient, Measurement[] measurements) => new()
    {
        Tool = Tool,
        Models = [],
        Image = new(id, 100, 100, null, null, "none", id),
        View = new(view, new Dictionary<string, double>(), null),
        Side = side,
        Patient = patient,
        Context = context,
        Adequacy = new(false, [], [], []),
        Landmarks = [],
        Lines = [],
        Circles = [],
        Measurements = measurements,
        Evidence = [],
        Prompts = [],
        Reasons = [],
        Timing = new Dictionary<string, double>(),
    };
}
