using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Phantom.Truth;

/// <summary>What is exactly known about a simulated film.</summary>
/// <param name="Seed">Seed of the patient.</param>
/// <param name="View">Projection.</param>
/// <param name="Side">Side of the body.</param>
/// <param name="AgeMonths">Age in months.</param>
/// <param name="Sex">Sex.</param>
/// <param name="Injuries">Codes of the injuries of this elbow; empty if there are none.</param>
/// <param name="Landmarks">Every landmark of the view in the fixed order; empty for oblique films.</param>
/// <param name="Locator">Pose of the elbow on the film.</param>
/// <param name="ViewErrorDegrees">Angle between the beam and the flexion axis (lateral) or the square to it (AP), of the true view.</param>
/// <param name="FlexionDegrees">Flexion, 0 = straight.</param>
/// <param name="UnitWMillimetres">W, the smallest outer anteroposterior width of the humeral shaft in its distal half.</param>
/// <param name="ObjectPixelMillimetres">Size of a pixel in the plane of the elbow.</param>
/// <param name="DetectorPixelMillimetres">Size of a pixel on the detector.</param>
/// <param name="SourceDetectorMillimetres">Distance of the source from the detector.</param>
public sealed record FilmTruth(
    ulong Seed,
    View View,
    Side Side,
    int AgeMonths,
    Sex Sex,
    IReadOnlyList<string> Injuries,
    IReadOnlyList<TruthLandmark> Landmarks,
    LocatorPoints Locator,
    double ViewErrorDegrees,
    double FlexionDegrees,
    double UnitWMillimetres,
    double ObjectPixelMillimetres,
    double DetectorPixelMillimetres,
    double SourceDetectorMillimetres);
