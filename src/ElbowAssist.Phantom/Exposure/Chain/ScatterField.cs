using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>
/// Scatter of a film without grid. The scatter-to-primary ratio of a homogeneous limb, 0.065·t^1.3 with its thickness t
/// in centimetres, follows a Monte Carlo run over water cylinders at 55 to 65 kV (0.5 at 5 cm, 0.8 at 7 cm, 1.1 at
/// 9 cm); what each ray scatters is then spread over the film by a wide Gaussian, so the ratio rises by itself behind
/// bone and metal, where the primary is low.
/// </summary>
internal sealed class ScatterField(GaussianBlur blur)
{
    private const double FullWidthPerSigma = 2.3548;

    /// <summary>Scatter-to-primary ratio of a homogeneous limb without grid.</summary>
    /// <param name="thicknessMm">Thickness in millimetres.</param>
    public static double Ratio(double thicknessMm) => 0.065 * Math.Pow(thicknessMm / 10, 1.3);

    /// <summary>Computes the scatter of a projection.</summary>
    /// <param name="paths">Path lengths.</param>
    /// <param name="primary">Primary signal, field and heel included.</param>
    /// <param name="pixelMm">Size of a pixel.</param>
    /// <param name="beam">Scale and width of the scatter.</param>
    /// <param name="scatter">Receives the scatter signal.</param>
    public void Compute(PathImage paths, ImagePlane primary, double pixelMm, BeamSettings beam, ImagePlane scatter)
    {
        scatter.Resize(primary.Width, primary.Height);
        var table = RatioTable(beam.ScatterScale);
        for (var i = 0; i < scatter.Count; i++)
        {
            var thickness = paths.Soft[i] + paths.Fat[i] + (1.8f * paths.Bone[i]) + paths.Cast[i];
            scatter.Pixels[i] = primary.Pixels[i] * table[Math.Clamp((int)thickness, 0, table.Length - 1)];
        }

        blur.Apply(scatter, scatter, beam.ScatterWidthMm / FullWidthPerSigma / pixelMm);
    }

    private static float[] RatioTable(double scale) =>
        [.. Enumerable.Range(0, 301).Select(mm => (float)(scale * Ratio(mm)))];
}
