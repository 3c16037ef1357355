using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Reading;

/// <summary>
/// Everything the tool says about one radiograph: the content of <c>elbowassist/reading/1</c>. A refused reading has
/// no landmarks, lines, circles or measurements; a withheld measurement has no value, line or circle anywhere in it.
/// </summary>
public sealed record FilmReading
{
    /// <summary>Schema identifier of the serialised form.</summary>
    public const string SchemaId = "elbowassist/reading/1";

    /// <summary>The program that made the reading.</summary>
    public required ToolIdentity Tool { get; init; }

    /// <summary>The models that proposed; empty when every landmark was placed by a reader.</summary>
    public required IReadOnlyList<ModelIdentity> Models { get; init; }

    /// <summary>The film.</summary>
    public required ImageFacts Image { get; init; }

    /// <summary>View and its certainty.</summary>
    public required ViewFinding View { get; init; }

    /// <summary>Side, from metadata, an option or the reader.</summary>
    public required Side Side { get; init; }

    /// <summary>Age and sex, if known.</summary>
    public required Patient Patient { get; init; }

    /// <summary>Why the film was taken, if known.</summary>
    public required FilmContext Context { get; init; }

    /// <summary>What the film can and cannot carry.</summary>
    public required Adequacy Adequacy { get; init; }

    /// <summary>Landmarks in the order of the view's set.</summary>
    public required IReadOnlyList<Landmark> Landmarks { get; init; }

    /// <summary>Lines, named after the measurement they serve; pixels of the original image.</summary>
    public required IReadOnlyList<NamedLine> Lines { get; init; }

    /// <summary>Circles, <c>capitellum</c> and <c>trochlea</c>; pixels of the original image.</summary>
    public required IReadOnlyList<NamedCircle> Circles { get; init; }

    /// <summary>All measurements of the view, withheld ones too.</summary>
    public required IReadOnlyList<Measurement> Measurements { get; init; }

    /// <summary>Places to look at, never a value to act on.</summary>
    public required IReadOnlyList<Evidence> Evidence { get; init; }

    /// <summary>What the rules ask the reader to think of.</summary>
    public required IReadOnlyList<Prompt> Prompts { get; init; }

    /// <summary>Reasons for refusing or withholding, each once, with its sentence.</summary>
    public required IReadOnlyList<Reason> Reasons { get; init; }

    /// <summary>The caution that every output carries.</summary>
    public string CautionText { get; init; } = Caution.Text;

    /// <summary>Milliseconds by stage; the only part of a reading that differs between runs.</summary>
    public required IReadOnlyDictionary<string, double> Timing { get; init; }
}
