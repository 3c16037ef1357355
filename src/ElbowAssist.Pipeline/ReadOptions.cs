using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Pipeline;

/// <summary>What is known of a film beyond its pixels.</summary>
public sealed record ReadOptions
{
    /// <summary>Nothing known.</summary>
    public static ReadOptions None { get; } = new();

    /// <summary>
    /// The view as stated, or null to recognise it. A stated view is taken; where recognition says otherwise, a check
    /// reports it. It does not make a radiograph of a photograph, or an elbow of a knee.
    /// </summary>
    public View? View { get; init; }

    /// <summary>Side of the body.</summary>
    public Side Side { get; init; }

    /// <summary>Age and sex.</summary>
    public Patient Patient { get; init; } = Patient.Unknown;

    /// <summary>Why the film was taken.</summary>
    public FilmContext Context { get; init; }

    /// <summary>
    /// Landmarks laid before, by a reader or a model, in film pixels; null to have the landmark model propose them.
    /// They need a stated view.
    /// </summary>
    public IReadOnlyList<Landmark>? Landmarks { get; init; }

    /// <summary>What the reader has said about the film.</summary>
    public ReaderStatements Statements { get; init; } = new();

    /// <summary>What the reader has marked, for the rules.</summary>
    public ReaderMarks Marks { get; init; } = ReaderMarks.None;
}
