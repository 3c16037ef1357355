using ElbowAssist.Geometry;

namespace ElbowAssist.Anatomy.Landmarks;

/// <summary>One laid landmark of a film.</summary>
/// <param name="Name">Name from the <see cref="LandmarkSet"/> of the view.</param>
/// <param name="Kind">Point or contour.</param>
/// <param name="Position">Pixels of the original image, or null if off the film, hidden or not yet formed.</param>
/// <param name="Covariance">Spread in squared pixels; null if there is no position or the spread is unknown.</param>
/// <param name="Visibility">Probability from 0 to 1 that the landmark can be seen on this film.</param>
/// <param name="Source">Model or reader.</param>
public sealed record Landmark(
    string Name,
    LandmarkKind Kind,
    Point? Position,
    Covariance? Covariance,
    double Visibility,
    LandmarkSource Source);
