using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Truth;

/// <summary>
/// The measurements of an elbow free of projection: the constructions laid in the exactly true view from far away, whole
/// limb on the film. On the lateral the joint keeps the flexion and rotation it was filmed in; on the AP it is straight and
/// supinated. Degrees, ratios and millimetres as the measurements state them.
/// </summary>
internal static class NeutralValues
{
    /// <summary>Distance of the source: beams are parallel to 0.1 % over the joint, and single precision still holds.</summary>
    private const double FarMillimetres = 30_000;

    private const int FilmMillimetres = 1000;

    /// <summary>Values by name of the measurement; empty for views without landmarks.</summary>
    public static IReadOnlyDictionary<string, double> Of(ElbowCase elbow, View view, Adequacy adequacy)
    {
        if (LandmarkSet.Of(view) is not { } set)
        {
            return new Dictionary<string, double>(StringComparer.Ordinal);
        }

        var filmed = PoseSampler.Sample(Simulation.Stream(elbow, view, 0), view, adequacy);
        var pose = filmed with
        {
            FlexionDegrees = view == View.Ap ? 0 : filmed.FlexionDegrees,
            ForearmRotationDegrees = view == View.Ap ? 0 : filmed.ForearmRotationDegrees,
            AxialRotationDegrees = 0,
            TiltDegrees = 0,
            FromBehind = false,
            SourceDetectorMillimetres = FarMillimetres,
            ObjectDetectorMillimetres = 0,
            CentralRayX = 0,
            CentralRayY = 0,
        };
        const double middle = FilmMillimetres / 2.0;
        var placement = new FilmPlacement(FilmMillimetres, FilmMillimetres, new Similarity(1, 0, new Vector(middle, middle), false));
        var posed = ElbowBuilder.Build(elbow, pose, 0);
        var landmarks = new LandmarkTruth(posed, new FilmCamera(pose, view), placement).Of(view);
        return FilmMeasuring.Exact(LaidLandmarks.Exact(set, [.. landmarks.Select(l => l.Position)], FilmScale.Of(1, 1)));
    }
}
