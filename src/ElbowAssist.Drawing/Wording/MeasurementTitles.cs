using System.Collections.Frozen;

namespace ElbowAssist.Drawing.Wording;

/// <summary>Names of measurements, evidence and zones in words.</summary>
internal static class MeasurementTitles
{
    private static readonly FrozenDictionary<string, string> Titles = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["anterior-humeral-line.position"] = "anterior humeral line, distal cortex",
        ["anterior-humeral-line.shaft.position"] = "anterior humeral line, shaft cortex",
        ["radiocapitellar-line.lateral.neck.offset"] = "radiocapitellar line, neck",
        ["radiocapitellar-line.lateral.shaft.offset"] = "radiocapitellar line, shaft",
        ["radiocapitellar-line.ap.neck.offset"] = "radiocapitellar line, neck",
        ["radiocapitellar-line.ap.shaft.offset"] = "radiocapitellar line, shaft",
        ["radiocapitellar-ratio"] = "radiocapitellar ratio",
        ["shaft-condylar-angle"] = "shaft-condylar angle",
        ["lateral-capitellohumeral-angle"] = "lateral capitellohumeral angle",
        ["flexion-angle"] = "flexion",
        ["baumann-angle"] = "Baumann angle, convention A",
        ["carrying-angle"] = "carrying angle, valgus +",
        ["radial-neck-shaft-angle"] = "radial neck-shaft angle",
        ["ulnohumeral-gap"] = "ulnohumeral gap",
        ["fat-pad.anterior.angle"] = "anterior fat pad angle",
        ["fat-pad.anterior"] = "anterior fat pad",
        ["fat-pad.posterior"] = "posterior fat pad",
        ["true-lateral.arc-offset"] = "offset of the capitellar and trochlear arcs",
        ["capitellum-behind-line"] = "the capitellum lies behind the line",
        ["anterior-third"] = "anterior third",
        ["middle-third"] = "middle third",
        ["posterior-third"] = "posterior third",
        ["capitellum-before-line"] = "the capitellum lies before the line",
    }.ToFrozenDictionary();

    /// <summary>The name in words; a name not listed is spelled out.</summary>
    public static string Of(string name) => Titles.TryGetValue(name, out var title)
        ? title
        : name.Replace(".", ", ", StringComparison.Ordinal).Replace('-', ' ');

    /// <summary>The name of a line, for a label on the film.</summary>
    public static string OfLine(string name) => Of(name).Replace(" cortex", "", StringComparison.Ordinal);
}
