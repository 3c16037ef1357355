using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom;

/// <summary>A finished simulated film with its exact truth.</summary>
/// <param name="Pixels">Grey values row by row, 0 to 65 535.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="PixelMm">Distance between pixels in the plane of the elbow, millimetres: magnification is corrected.</param>
/// <param name="Context">Why the film was taken, as a sidecar would state it.</param>
/// <param name="Truth">Truth; landmarks outside the exposed field are not visible and have no position.</param>
/// <param name="Exposure">How the film was exposed and processed.</param>
public sealed record SimulatedFilm(
    ushort[] Pixels, int Width, int Height, double PixelMm, FilmContext Context, FilmTruth Truth, ExposureSettings Exposure)
{
    /// <summary>
    /// The measurements free of projection, by name: laid in the exactly true view with parallel beams; on the AP of the
    /// straight, supinated elbow.
    /// </summary>
    public IReadOnlyDictionary<string, double> Neutral { get; init; } = new Dictionary<string, double>(StringComparer.Ordinal);

    /// <summary>The chief figures of pose and exposure by name, for truth files; <c>fault.NAME</c> is 1 for each fault drawn.</summary>
    public IReadOnlyDictionary<string, double> ExposureFigures
    {
        get
        {
            var figures = new SortedDictionary<string, double>(StringComparer.Ordinal)
            {
                ["kilovolts"] = Exposure.Beam.Kilovolts,
                ["filterMmAluminium"] = Exposure.Beam.FilterMm,
                ["detectorDoseMicrogray"] = Exposure.Detector.DoseMicrogray,
                ["detectorEfficiency"] = Exposure.Detector.Efficiency,
                ["detectorSaturation"] = Exposure.Detector.Saturation,
                ["scatterScale"] = Exposure.Beam.ScatterScale,
                ["detectorBlurMm"] = Exposure.Detector.BlurMm,
                ["motionMm"] = Exposure.Beam.MotionMm,
                ["softTissueGrey"] = Exposure.Processing.SoftTissueGrey,
                ["clipHigh"] = Exposure.Processing.ClipHigh,
                ["headroom"] = Exposure.Processing.Headroom,
                ["inverted"] = Exposure.Processing.Inverted ? 1 : 0,
                ["faults"] = Exposure.Faults.Count,
                ["flexionDegrees"] = Truth.FlexionDegrees,
                ["unitWMm"] = Truth.UnitWMillimetres,
                ["detectorPixelMm"] = Truth.DetectorPixelMillimetres,
                ["sourceDetectorMm"] = Truth.SourceDetectorMillimetres,
            };
            foreach (var fault in Exposure.Faults)
            {
                figures["fault." + fault] = 1;
            }

            return figures;
        }
    }
}
