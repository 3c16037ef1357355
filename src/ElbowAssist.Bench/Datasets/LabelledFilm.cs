using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;

namespace ElbowAssist.Bench.Datasets;

/// <summary>A film of a data set with its reference and who laid what on it.</summary>
public sealed record LabelledFilm
{
    /// <summary>File name within the data set, perhaps with folders; no two films share one.</summary>
    public required string File { get; init; }

    /// <summary>Path of the picture.</summary>
    public required string Path { get; init; }

    /// <summary>The reference: exact truth, or the mean of those who laid landmarks without a tool's proposals.</summary>
    public required TruthFile Truth { get; init; }

    /// <summary>A word that films of one patient share: whatever is drawn or permuted, whole patients are.</summary>
    public required string Patient { get; init; }

    /// <summary>Where the film was taken; empty if not said.</summary>
    public string Site { get; init; } = "";

    /// <summary>Names of the injuries; empty for none, null if not said.</summary>
    public IReadOnlyList<string>? Injuries { get; init; }

    /// <summary>Who laid what; empty where the reference is exact truth.</summary>
    public IReadOnlyList<Placement> Placements { get; init; } = [];
}

/// <summary>Landmarks of one reader on one film.</summary>
/// <param name="Reader">A word for whoever laid them.</param>
/// <param name="WithProposals">Whether a tool's proposals were on view.</param>
/// <param name="Landmarks">Landmarks of the view's set that the reader laid.</param>
public sealed record Placement(string Reader, bool WithProposals, IReadOnlyList<TrueLandmark> Landmarks)
{
    /// <summary>Lines that the reader drew by hand, under names such as <c>anterior-humeral-line</c>; film pixels.</summary>
    public IReadOnlyList<NamedLine> Lines { get; init; } = [];
}
