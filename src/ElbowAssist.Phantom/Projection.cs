using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom;

/// <summary>One projected film before exposure: materials along every ray, and the truth.</summary>
/// <param name="Paths">Path lengths and bone labels.</param>
/// <param name="Truth">Exact landmarks and film facts.</param>
public sealed record Projection(PathImage Paths, FilmTruth Truth);
