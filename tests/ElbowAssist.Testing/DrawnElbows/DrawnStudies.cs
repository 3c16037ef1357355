using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>Films of drawn elbows with their readings, ready for a study.</summary>
public static class DrawnStudies
{
    /// <summary>The tool that drawn readings name.</summary>
    public static ToolIdentity Tool { get; } = new("ElbowAssist", "0.1.0");

    /// <summary>One film, measured on its landmarks by the project's assembler.</summary>
    public static StudyFilm Film(
        string id,
        DrawnElbow elbow,
        View view,
        Side side,
        Patient patient,
        FilmContext context = FilmContext.Acute,
        int seed = 1,
        double? spacingMm = 0.2,
        LandmarkSource source = LandmarkSource.Reader,
        double deviation = 0.8)
    {
        var reading = ReadingAssembler.Default.Assemble(new()
        {
            Tool = Tool,
            Image = new(id, DrawnElbow.Columns, DrawnElbow.Rows, spacingMm, spacingMm, spacingMm is null ? "none" : "sidecar", new string('0', 60) + seed.ToString("x4", System.Globalization.CultureInfo.InvariantCulture)),
            View = new(view, new Dictionary<string, double>(StringComparer.Ordinal), source == LandmarkSource.Model ? 4 : null),
            Side = side,
            Patient = patient,
            Context = context,
            Landmarks = elbow.Landmarks(view, seed, deviation, source),
        });
        return new StudyFilm(id, reading, []);
    }
}
