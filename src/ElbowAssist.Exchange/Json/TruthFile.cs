using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json;

/// <summary>What is known to be true of a film: the content of <c>elbowassist/truth/1</c>.</summary>
public sealed record TruthFile
{
    /// <summary>Schema identifier of the serialised form.</summary>
    public const string SchemaId = "elbowassist/truth/1";

    /// <summary>The film.</summary>
    public required ImageFacts Image { get; init; }

    /// <summary>The true view.</summary>
    public required ViewFinding View { get; init; }

    /// <summary>Side.</summary>
    public required Side Side { get; init; }

    /// <summary>Age and sex.</summary>
    public required Patient Patient { get; init; }

    /// <summary>Why the film was taken.</summary>
    public required FilmContext Context { get; init; }

    /// <summary>True landmarks in the order of the view's set.</summary>
    public required IReadOnlyList<TrueLandmark> Landmarks { get; init; }

    /// <summary>Lines through the exact landmarks; pixels of the original image.</summary>
    public IReadOnlyList<NamedLine> Lines { get; init; } = [];

    /// <summary>Circles through the exact landmarks; pixels of the original image.</summary>
    public IReadOnlyList<NamedCircle> Circles { get; init; } = [];

    /// <summary>The measurements' constructions applied to the exact landmarks with equal weights.</summary>
    public IReadOnlyList<Measurement> Measurements { get; init; } = [];

    /// <summary>How the film was simulated, or null for a film labelled by readers.</summary>
    public SimulatedFacts? Simulated { get; init; }

    /// <summary>What the picture shows in place of an elbow; null for a film of an elbow.</summary>
    public NotElbowFacts? NotElbow { get; init; }
}

/// <summary>What a simulated picture shows in place of an elbow.</summary>
/// <param name="Seed">The seed that fixes the picture.</param>
/// <param name="Shows">In lower-case words with hyphens: <c>knee</c>, <c>text-page</c>.</param>
/// <param name="Version"><c>as-taken</c>, or what was done to the picture.</param>
public sealed record NotElbowFacts(ulong Seed, string Shows, string Version);

/// <summary>A true landmark.</summary>
/// <param name="Name">Name from the view's set.</param>
/// <param name="Kind">Point or contour.</param>
/// <param name="Position">Pixels of the original image, or null if off the film, hidden or not yet formed.</param>
/// <param name="Tangent">Direction of the outline at a contour point; null for a point.</param>
/// <param name="Visibility">0 or 1, or a share between.</param>
public sealed record TrueLandmark(string Name, LandmarkKind Kind, Point? Position, Vector? Tangent, double Visibility);

/// <summary>How a film was simulated.</summary>
/// <param name="Seed">The seed that fixes the patient.</param>
/// <param name="AgeMonths">Age in months.</param>
/// <param name="Sex">Sex.</param>
/// <param name="Side">Side.</param>
/// <param name="Injuries">Names of the injuries, empty for none.</param>
/// <param name="ViewErrorDegrees">Rotation away from the true view, degrees.</param>
/// <param name="Exposure">Figures of exposure and detector by name, e.g. tube voltage in kV.</param>
/// <param name="Neutral">The three-dimensional value of each measurement, free of projection.</param>
public sealed record SimulatedFacts(
    ulong Seed,
    int AgeMonths,
    Sex Sex,
    Side Side,
    IReadOnlyList<string> Injuries,
    double ViewErrorDegrees,
    IReadOnlyDictionary<string, double> Exposure,
    IReadOnlyDictionary<string, double> Neutral);
