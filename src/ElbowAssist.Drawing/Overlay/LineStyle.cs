using ElbowAssist.Drawing.Marks;
using ElbowAssist.Reading;

namespace ElbowAssist.Drawing.Overlay;

/// <summary>How a line looks: who laid it by colour and dash, its state by pattern, its rank by width.</summary>
/// <param name="Ink">Reader or tool.</param>
/// <param name="Width">Width in units of a thousandth of the film.</param>
/// <param name="Dashes">Pattern in the same unit; empty for solid.</param>
internal sealed record LineStyle(Ink Ink, double Width, IReadOnlyList<double> Dashes)
{
    private static readonly string[] Alignment = ["anterior-humeral-line", "radiocapitellar-line"];

    /// <summary>Lines of alignment stand out; axes of angles stay behind.</summary>
    public static bool IsAlignment(string name) => Alignment.Any(a => name.StartsWith(a, StringComparison.Ordinal));

    /// <summary>The style of a line of a measurement.</summary>
    public static LineStyle Of(string name, MeasurementState state, bool byReader)
    {
        var width = IsAlignment(name) ? 2.0 : 1.1;
        return (byReader, state) switch
        {
            (true, MeasurementState.EitherSide) => new(Ink.Reader, width, [26, 5, 3, 5]),
            (true, _) => new(Ink.Reader, width, []),
            (false, MeasurementState.EitherSide) => new(Ink.Tool, width, [12, 5, 3, 5]),
            (false, _) => new(Ink.Tool, width, [12, 7]),
        };
    }

    /// <summary>Beginnings of the names of the landmarks a measurement's lines are laid through.</summary>
    public static IReadOnlyList<string> LandmarksOf(string name) => name switch
    {
        _ when name.StartsWith("anterior-humeral-line", StringComparison.Ordinal) => ["humerus.anterior"],
        _ when name.StartsWith("radiocapitellar-", StringComparison.Ordinal) || name.StartsWith("radial-", StringComparison.Ordinal) => ["radius."],
        "carrying-angle" => ["humerus.lateral", "humerus.medial", "ulna."],
        "flexion-angle" => ["humerus.anterior", "humerus.posterior", "ulna.posterior"],
        "fat-pad.anterior.angle" => ["humerus.anterior", "humerus.posterior", "fatpad.anterior"],
        "shaft-condylar-angle" => ["humerus.", "capitellum.rim"],
        _ => ["humerus.", "capitellum."],
    };

    /// <summary>Beginnings of the names of the landmarks between which a line is drawn; empty for all of them.</summary>
    public static IReadOnlyList<string> SpanOf(string name) => name switch
    {
        _ when name.StartsWith("anterior-humeral-line", StringComparison.Ordinal) => [],
        _ when name.StartsWith("radiocapitellar-", StringComparison.Ordinal) => ["radius.", "capitellum."],
        "fat-pad.anterior.angle" => ["fatpad.anterior"],
        _ => LandmarksOf(name),
    };
}
