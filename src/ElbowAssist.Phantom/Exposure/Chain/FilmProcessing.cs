using ElbowAssist.Phantom.Exposure.Settings;

namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>
/// From detector signal to grey values as a digital system makes them: logarithm, window on percentiles of the exposed
/// field, detail and structure gains, equalisation, a tone curve anchored on soft tissue. The order is common practice;
/// no system is copied.
/// </summary>
internal sealed class FilmProcessing(GaussianBlur blur)
{
    private const double DetailMm = 0.5;
    private const double StructureMm = 3;
    private const double CoarseMm = 14;
    private const double NormalisationMm = 7;
    private readonly ImagePlane fine = new();
    private readonly ImagePlane structure = new();
    private readonly ImagePlane coarse = new();

    /// <summary>Turns a signal into grey values from 0 to 1, in place.</summary>
    /// <param name="film">Detector signal as a share of that in air.</param>
    /// <param name="inField">Whether a pixel is exposed.</param>
    /// <param name="isSoft">Whether a pixel shows plain soft tissue.</param>
    /// <param name="pixelMm">Size of a pixel.</param>
    /// <param name="settings">Processing.</param>
    public void Apply(ImagePlane film, bool[] inField, bool[] isSoft, double pixelMm, ProcessingSettings settings)
    {
        var pixels = film.Pixels;
        Signals.ToLog(film);
        var window = Histogram.Percentiles(
            pixels, i => inField[i], film.Count, [settings.WindowLowPercentile, settings.WindowHighPercentile], 1) ?? [0, 1];
        var scale = 1 / MathF.Max(0.05f, (window[1] - window[0]) * (float)(1 + settings.Headroom));
        for (var i = 0; i < film.Count; i++)
        {
            pixels[i] = Math.Clamp((pixels[i] - window[0]) * scale, -0.15f, 1.15f);
        }

        Enhance(film, pixelMm, settings);
        if (settings.LocalNormalisation > 0)
        {
            Normalise(film, pixelMm, (float)settings.LocalNormalisation);
        }

        var soft = Histogram.Percentiles(pixels, i => isSoft[i] && inField[i], film.Count, [50], 50)?[0] ?? 0.4f;
        ToneCurve(film, soft, settings);
    }

    private void Enhance(ImagePlane film, double pixelMm, ProcessingSettings settings)
    {
        blur.Apply(film, fine, DetailMm / pixelMm);
        blur.Apply(film, structure, StructureMm / pixelMm);
        blur.Apply(film, coarse, CoarseMm / pixelMm);
        var detailGain = (float)settings.DetailGain;
        var structureGain = (float)settings.StructureGain;
        var equalisation = (float)settings.Equalisation;
        for (var i = 0; i < film.Count; i++)
        {
            var v = film.Pixels[i];
            film.Pixels[i] = v + (detailGain * (v - fine.Pixels[i])) + (structureGain * (v - structure.Pixels[i])) -
                (equalisation * (coarse.Pixels[i] - 0.45f));
        }
    }

    private void Normalise(ImagePlane film, double pixelMm, float share)
    {
        blur.Apply(film, coarse, NormalisationMm / pixelMm);
        structure.Resize(film.Width, film.Height);
        for (var i = 0; i < film.Count; i++)
        {
            var d = film.Pixels[i] - coarse.Pixels[i];
            structure.Pixels[i] = d * d;
        }

        blur.Apply(structure, structure, NormalisationMm / pixelMm);
        for (var i = 0; i < film.Count; i++)
        {
            var normalised = 0.45f + (0.2f * (film.Pixels[i] - coarse.Pixels[i]) / (MathF.Sqrt(structure.Pixels[i]) + 0.06f));
            film.Pixels[i] += share * (normalised - film.Pixels[i]);
        }
    }

    private static void ToneCurve(ImagePlane film, float soft, ProcessingSettings settings)
    {
        var gamma = Math.Clamp(Math.Log(settings.SoftTissueGrey) / Math.Log(Math.Clamp(soft, 0.05, 0.9)), 0.35, 4);
        var clipScale = 1 / Math.Max(0.2, 1 - settings.ClipLow - settings.ClipHigh);
        var table = new float[4097];
        for (var i = 0; i < table.Length; i++)
        {
            var v = Math.Pow(i / 4096.0 * 1.25, gamma);
            v = settings.SigmoidSlope > 0 ? Sigmoid(v, settings.SigmoidSlope) : v;
            table[i] = (float)Math.Clamp((v - settings.ClipLow) * clipScale, 0, 1);
        }

        for (var i = 0; i < film.Count; i++)
        {
            var at = Math.Clamp(film.Pixels[i] / 1.25f, 0, 1) * 4095.999f;
            var lower = (int)at;
            film.Pixels[i] = table[lower] + ((table[lower + 1] - table[lower]) * (at - lower));
        }
    }

    /// <summary>A sigmoid through (0,0) and (1,1), steepest at 0.5.</summary>
    private static double Sigmoid(double v, double slope)
    {
        double Raw(double x) => 1 / (1 + Math.Exp(-2 * slope * (x - 0.5)));
        return (Raw(v) - Raw(0)) / (Raw(1) - Raw(0));
    }
}
