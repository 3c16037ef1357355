using System.Collections.Frozen;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Exchange.Dicom.Codes;

/// <summary>
/// Codes of this project for what no standard names, in the scheme 99ELBOWASSIST. They are the stable key of a
/// landmark or measurement in any object that leaves or comes back; never change or reuse one.
/// </summary>
internal static class PrivateCodes
{
    public const string Scheme = "99ELBOWASSIST";
    public const string SchemeVersion = "1";

    public static readonly Code HeatMap = Own("HEATMAP", "Neural network heat map");
    public static readonly Code LeastSquares = Own("LSQ", "Construction on landmarks by least squares");
    public static readonly Code Manual = Own("MANUAL", "Placed by a reader");
    public static readonly Code Region95 = Own("POS-R95", "Radius of 95 percent position region");
    public static readonly Code Refusal = Own("REFUSAL", "Reason no measurement was made");
    public static readonly Code Status = Own("STATUS", "Analysis status");

    /// <summary>First words of a landmark's or measurement's name and their short form; numbers stay as they are.</summary>
    private static readonly Dictionary<string, string> ShortWords = new(StringComparer.Ordinal)
    {
        ["humerus"] = "HUM",
        ["capitellum"] = "CAP",
        ["trochlea"] = "TRO",
        ["radius"] = "RAD",
        ["ulna"] = "ULN",
        ["fatpad"] = "FP",
        ["anterior"] = "ANT",
        ["posterior"] = "POST",
        ["lateral"] = "LAT",
        ["medial"] = "MED",
        ["epicondyle"] = "EPI",
        ["physis"] = "PHYS",
        ["coronoid"] = "COR",
        ["olecranon"] = "OLE",
    };

    private static readonly FrozenDictionary<string, Code> Measurements = new Dictionary<string, Code>(StringComparer.Ordinal)
    {
        ["anterior-humeral-line.position"] = Own("AHL", "Anterior humeral line, distal cortex: crossing of the capitellum"),
        ["anterior-humeral-line.shaft.position"] = Own("AHL-SHAFT", "Anterior humeral line, shaft cortex: crossing of the capitellum"),
        ["radiocapitellar-line.lateral.neck.offset"] = Own("RCL-LAT-NECK", "Radiocapitellar line, lateral view, neck axis: offset"),
        ["radiocapitellar-line.lateral.shaft.offset"] = Own("RCL-LAT-SHAFT", "Radiocapitellar line, lateral view, shaft axis: offset"),
        ["radiocapitellar-line.ap.neck.offset"] = Own("RCL-AP-NECK", "Radiocapitellar line, AP view, neck axis: offset"),
        ["radiocapitellar-line.ap.shaft.offset"] = Own("RCL-AP-SHAFT", "Radiocapitellar line, AP view, shaft axis: offset"),
        ["radiocapitellar-ratio"] = Own("RC-RATIO", "Radiocapitellar ratio"),
        ["shaft-condylar-angle"] = Own("SHAFT-CONDYLAR", "Shaft-condylar angle"),
        ["lateral-capitellohumeral-angle"] = Own("LAT-CAPHUM", "Lateral capitellohumeral angle"),
        ["flexion-angle"] = Own("FLEXION", "Flexion angle, 0 = straight"),
        ["baumann-angle"] = Own("BAUMANN", "Baumann angle, convention A (larger = more varus)"),
        ["carrying-angle"] = Own("CARRYING", "Carrying angle, valgus positive"),
        ["radial-neck-shaft-angle"] = Own("RAD-NECK-SHAFT", "Radial neck-shaft angle"),
        ["ulnohumeral-gap"] = Own("UH-GAP", "Ulnohumeral gap"),
        ["fat-pad.anterior.angle"] = Own("FP-ANT-ANGLE", "Anterior fat pad angle"),
        ["true-lateral.arc-offset"] = Own("ARC-OFFSET", "Offset of the capitellar and trochlear arcs"),
        ["ulnar-bow"] = Own("ULNAR-BOW", "Ulnar bow"),
        ["fat-pad.anterior"] = Own("FP-ANT", "Anterior fat pad"),
        ["fat-pad.posterior"] = Own("FP-POST", "Posterior fat pad"),
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, Code> Landmarks = LandmarkSet.Lateral.Landmarks
        .Concat(LandmarkSet.Ap.Landmarks)
        .DistinctBy(l => l.Name)
        .ToFrozenDictionary(l => l.Name, l => Own(Shorten(l.Name), "Landmark " + l.Name), StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> LandmarkNames =
        Landmarks.ToFrozenDictionary(l => l.Value.Value, l => l.Key, StringComparer.Ordinal);

    /// <summary>Code of a landmark in either view's set.</summary>
    public static Code Landmark(string name) => Landmarks[name];

    /// <summary>Name of the landmark a code stands for, or null.</summary>
    public static string? LandmarkName(Code? code) => code is { Scheme: Scheme } ? LandmarkNames.GetValueOrDefault(code.Value) : null;

    /// <summary>Code of a measurement or of evidence; a name without a code of its own gets one derived from it.</summary>
    public static Code Measurement(string name) => Measurements.TryGetValue(name, out var code) ? code : Derived("M-", name);

    /// <summary>Code of a reason for withholding or refusing.</summary>
    public static Code Reason(string reason) => Derived("R-", reason);

    private static Code Derived(string prefix, string name)
    {
        var digest = Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(name)).AsSpan(0, 6));
        return Own(prefix + digest, name);
    }

    private static string Shorten(string name) =>
        string.Join('-', name.Split('.').Select(w => ShortWords.GetValueOrDefault(w, w.ToUpper(CultureInfo.InvariantCulture))));

    private static Code Own(string value, string meaning) => new(value, Scheme, meaning);
}
