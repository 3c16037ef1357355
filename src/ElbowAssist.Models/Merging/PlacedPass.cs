using ElbowAssist.Geometry;

namespace ElbowAssist.Models.Merging;

/// <summary>A pass and the way back from its crop to the film.</summary>
/// <param name="Pass">What the pass proposed, in crop pixels.</param>
/// <param name="CropToFilm">From crop to film pixels.</param>
/// <param name="Side">Side of the crop in pixels.</param>
public sealed record PlacedPass(LandmarkPass Pass, Similarity CropToFilm, int Side)
{
    /// <summary>Whether a place of the film lies inside the crop, by a margin.</summary>
    internal bool Shows(Point film, double margin)
    {
        var p = CropToFilm.Inverse.Apply(film);
        return p.X >= margin && p.Y >= margin && p.X <= Side - margin && p.Y <= Side - margin;
    }
}
