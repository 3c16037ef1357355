using ElbowAssist.Geometry;

namespace ElbowAssist.Models.Merging;

/// <summary>A pass and the way back from its crop to the film.</summary>
/// <param name="Pass">What the pass proposed, in crop pixels.</param>
/// <param name="CropToFilm">From crop to film pixels.</param>
public sealed record PlacedPass(LandmarkPass Pass, Similarity CropToFilm);
