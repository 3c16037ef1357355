using ElbowAssist.Imaging.Native;
using ElbowAssist.Imaging.Normalisation;
using OpenCvSharp;

namespace ElbowAssist.Imaging;

/// <summary>
/// 16-bit samples of a radiograph for a screen that windows them itself, bone bright, with the window to begin with.
/// Never an input of a measurement.
/// </summary>
/// <param name="Samples">Grey values row by row; larger is brighter.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="Low">Value to show black at first.</param>
/// <param name="High">Value to show white at first.</param>
public sealed record DisplaySamples(ReadOnlyMemory<ushort> Samples, int Width, int Height, int Low, int High)
{
    /// <summary>Prepares a film, reduced so that its longer side has at most <paramref name="longestSide"/> samples; never enlarged.</summary>
    public static DisplaySamples Of(NormalisedFilm film, int longestSide)
    {
        ArgumentNullException.ThrowIfNull(film);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longestSide);
        NativeLibraries.EnsureLoadable();
        var radiograph = film.Film;
        var scale = Math.Min(1, longestSide / (double)Math.Max(radiograph.Width, radiograph.Height));
        var (width, height) = (Math.Max(1, (int)Math.Round(radiograph.Width * scale)), Math.Max(1, (int)Math.Round(radiograph.Height * scale)));
        var samples = new ushort[width * height];
        using var source = Mat.FromPixelData(radiograph.Height, radiograph.Width, MatType.CV_16UC1, radiograph.Samples);
        using var target = Mat.FromPixelData(height, width, MatType.CV_16UC1, samples);
        Cv2.Resize(source, target, new Size(width, height), 0, 0, InterpolationFlags.Area);
        var (low, high) = (film.Window.Low, film.Window.High);
        if (!film.Polarity.BoneIsDark)
        {
            return new(samples, width, height, low, high);
        }

        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = (ushort)(ushort.MaxValue - samples[i]);
        }

        return new(samples, width, height, ushort.MaxValue - high, ushort.MaxValue - low);
    }
}
