using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>What the landmark passes propose.</summary>
/// <param name="Landmarks">Landmarks in the order of the view's set; those not seen have no position.</param>
/// <param name="Spread">Joint covariance in the same order.</param>
/// <param name="Unusable">Landmarks on which passes disagree.</param>
/// <param name="ViewErrorDegrees">View error from the crop, or null if the model does not estimate it.</param>
/// <param name="Checks">Checks made.</param>
internal sealed record LandmarkResult(
    IReadOnlyList<Landmark> Landmarks,
    JointCovariance Spread,
    IReadOnlyList<UnusableLandmark> Unusable,
    double? ViewErrorDegrees,
    IReadOnlyList<AdequacyCheck> Checks);
