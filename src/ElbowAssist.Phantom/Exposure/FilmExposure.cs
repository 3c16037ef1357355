using ElbowAssist.Phantom.Exposure.Annotations;
using ElbowAssist.Phantom.Exposure.Chain;
using ElbowAssist.Phantom.Exposure.Field;
using ElbowAssist.Phantom.Exposure.Physics;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.Exposure;

/// <summary>
/// Exposes a projection to a film of 16-bit grey values. An instance keeps its buffers from film to film: use one per
/// thread. The same paths and settings give the same pixels on one processor family. Elsewhere the last bits of vector
/// functions may differ: with narrower vectors, and without any, 8 films of 128 by 128 pixels changed in fewer than 2 of
/// 10 000 pixels, each by one grey level of the film. Hold films of another family to two grey levels.
/// </summary>
public sealed class FilmExposure
{
    private const double ObjectMm = 8;
    private const double GlareMm = 10;
    private readonly GaussianBlur blur = new();
    private readonly ImagePlane film = new();
    private readonly ImagePlane scratch = new();
    private readonly ScatterField scatter;
    private readonly FilmProcessing processing;
    private bool[] inField = [];
    private bool[] isSoft = [];
    private bool[] isObject = [];

    /// <summary>An exposure with empty buffers.</summary>
    public FilmExposure()
    {
        scatter = new ScatterField(blur);
        processing = new FilmProcessing(blur);
    }

    /// <summary>Exposes a projection.</summary>
    /// <param name="paths">Path lengths of all that is on the film.</param>
    /// <param name="pixelMm">Size of a pixel in the object plane, millimetres.</param>
    /// <param name="settings">Everything between tube and stored film; a hand or second film must already be in the paths.</param>
    /// <returns>Grey values row by row; bone bright unless the settings invert.</returns>
    public ushort[] Expose(PathImage paths, double pixelMm, ExposureSettings settings)
    {
        ArgumentNullException.ThrowIfNull(paths);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pixelMm);
        var field = new ExposedField(settings, paths.Width, paths.Height, pixelMm);
        Detect(paths, pixelMm, settings, field);
        processing.Apply(film, inField, isSoft, pixelMm, settings.Processing);
        return Finish(settings);
    }

    /// <summary>The detector signal as a share of that in air, before any processing.</summary>
    internal ReadOnlySpan<float> Detect(PathImage paths, double pixelMm, ExposureSettings settings, ExposedField field)
    {
        var beam = settings.Beam;
        new BeamModel(beam).Project(paths, film.Resize(paths.Width, paths.Height).Pixels);
        Classify(paths);
        Illuminate(beam, field);
        foreach (var sign in settings.Annotations.Where(a => a.Kind == AnnotationKind.Lead))
        {
            AnnotationPainter.ExposeLead(film, sign);
        }

        scatter.Compute(paths, film, pixelMm, beam, scratch);
        Signals.Add(film, scratch);
        blur.Apply(film, film, beam.FocalBlurMm / pixelMm);
        MotionBlur.Apply(film, scratch, beam.MotionMm / pixelMm, beam.MotionDirectionDegrees);
        var reference = ReferenceSignal();
        var detector = settings.Detector;
        var quanta = detector.DoseMicrogray * QuantumNoise.QuantaPerSquareMillimetreAndMicrogray * pixelMm * pixelMm;
        QuantumNoise.Add(film, settings.NoiseSeed, quanta * detector.Efficiency / reference, detector.ElectronicNoise);
        Signals.CutAbove(film, (float)(reference * detector.Saturation));
        blur.Apply(film, film, detector.BlurMm / pixelMm);
        Signals.Spread(film, scratch, blur, GlareMm / pixelMm, (float)detector.Glare);
        return film.Pixels.AsSpan(0, film.Count);
    }

    private void Classify(PathImage paths)
    {
        if (isSoft.Length < film.Count)
        {
            inField = new bool[film.Count];
            isSoft = new bool[film.Count];
            isObject = new bool[film.Count];
        }

        for (var i = 0; i < film.Count; i++)
        {
            isObject[i] = paths.Soft[i] + paths.Fat[i] + paths.Bone[i] > ObjectMm;
            isSoft[i] = isObject[i] && paths.Bone[i] < 0.3f && paths.Metal[i] <= 0 && paths.Cast[i] <= 0;
        }
    }

    /// <summary>Field, heel effect and the table behind the arm.</summary>
    private void Illuminate(BeamSettings beam, ExposedField field)
    {
        const double tablePerMm = 0.03;
        var (sine, cosine) = Math.SinCos(beam.HeelDirectionDegrees * Math.PI / 180);
        var longer = Math.Max(film.Width, film.Height);
        for (var y = 0; y < film.Height; y++)
        {
            var line = film.Row(y);
            for (var x = 0; x < line.Length; x++)
            {
                var across = (((x - (film.Width / 2.0)) * cosine) + ((y - (film.Height / 2.0)) * sine)) / longer;
                var intensity = field.Intensity(x + 0.5, y + 0.5);
                inField[(y * film.Width) + x] = intensity > 0.5;
                var table = Math.Exp(-tablePerMm * beam.TableMm * (1 + (beam.TableSlope * across)));
                line[x] *= (float)(intensity * table * (1 - (beam.HeelSlope * across)));
            }
        }
    }

    private double ReferenceSignal()
    {
        var sum = 0.0;
        var count = 0;
        for (var i = 0; i < film.Count; i++)
        {
            if (isObject[i] && inField[i])
            {
                sum += film.Pixels[i];
                count++;
            }
        }

        return count > 0 ? sum / count : 1;
    }

    private ushort[] Finish(ExposureSettings settings)
    {
        if (settings.Processing.Inverted)
        {
            for (var i = 0; i < film.Count; i++)
            {
                film.Pixels[i] = 1 - film.Pixels[i];
            }
        }

        if (settings.Field.ShutterGrey is { } grey)
        {
            for (var i = 0; i < film.Count; i++)
            {
                film.Pixels[i] = inField[i] ? film.Pixels[i] : (float)grey;
            }
        }

        foreach (var sign in settings.Annotations.Where(a => a.Kind != AnnotationKind.Lead))
        {
            AnnotationPainter.BurnIn(film, sign);
        }

        return Quantise(settings.Processing.Bits);
    }

    private ushort[] Quantise(int bits)
    {
        var levels = (1 << bits) - 1;
        var result = new ushort[film.Count];
        for (var i = 0; i < result.Length; i++)
        {
            var level = (int)((Math.Clamp(film.Pixels[i], 0f, 1f) * levels) + 0.5f);
            result[i] = (ushort)((((long)level * 65535) + (levels / 2)) / levels);
        }

        return result;
    }
}
