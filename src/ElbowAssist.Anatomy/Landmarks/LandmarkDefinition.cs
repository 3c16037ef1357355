namespace ElbowAssist.Anatomy.Landmarks;

/// <summary>A landmark of a view: its fixed name and its kind.</summary>
/// <param name="Name">Stable dotted name, as in results and model folders.</param>
/// <param name="Kind">Point or contour.</param>
public sealed record LandmarkDefinition(string Name, LandmarkKind Kind);
