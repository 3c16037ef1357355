using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Exchange.Json.Coco;

/// <summary>A COCO keypoints file as a labelled set: its films with what is known of them, and who laid what on them.</summary>
/// <param name="Images">Films in the order of the file.</param>
/// <param name="Annotations">Placements in the order of the file; those of other categories are left out.</param>
public sealed record CocoSet(IReadOnlyList<CocoImage> Images, IReadOnlyList<CocoAnnotation> Annotations)
{
    /// <summary>Keypoint names by category number, to understand results of other programs on the same films.</summary>
    internal IReadOnlyDictionary<int, IReadOnlyList<string>> Keypoints { get; init; } = new Dictionary<int, IReadOnlyList<string>>();
}

/// <summary>A film of a labelled set. COCO gives number, name and size; the other members are extra members of the image.</summary>
/// <param name="Id">Number in the file.</param>
/// <param name="File">File name, perhaps with folders below that of the set.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
public sealed record CocoImage(int Id, string File, int Width, int Height)
{
    /// <summary><c>rowSpacingMm</c>: distance between rows in the patient plane, or null.</summary>
    public double? RowSpacingMm { get; init; }

    /// <summary><c>columnSpacingMm</c>: distance between columns, or null.</summary>
    public double? ColumnSpacingMm { get; init; }

    /// <summary><c>patient</c>: a word that films of one patient share, or null.</summary>
    public string? Patient { get; init; }

    /// <summary><c>site</c>: where the film was taken, or null.</summary>
    public string? Site { get; init; }

    /// <summary><c>ageMonths</c>: age in completed months, or null.</summary>
    public int? AgeMonths { get; init; }

    /// <summary><c>sex</c>, or null.</summary>
    public Sex? Sex { get; init; }

    /// <summary><c>side</c>.</summary>
    public Side Side { get; init; }

    /// <summary><c>injuries</c>: names of the injuries; empty for none, null if not said.</summary>
    public IReadOnlyList<string>? Injuries { get; init; }
}

/// <summary>What one person or program laid on one film.</summary>
/// <param name="Image">The film.</param>
/// <param name="View">Lateral or AP.</param>
/// <param name="Annotator"><c>annotator</c>: a word for whoever laid it; empty if not said.</param>
/// <param name="WithProposals"><c>withProposals</c>: whether a tool's proposals were on view; false if not said.</param>
/// <param name="Landmarks">Landmarks; pixels of the original image with (0,0) the top-left corner of the top-left pixel.</param>
public sealed record CocoAnnotation(CocoImage Image, View View, string Annotator, bool WithProposals, IReadOnlyList<Landmark> Landmarks);
