using ElbowAssist.Imaging.Native;
using ElbowAssist.Imaging.Normalisation;
using OpenCvSharp;

namespace ElbowAssist.Imaging;

/// <summary>An 8-bit picture of a radiograph for the screen, bone bright. Never an input of a measurement.</summary>
/// <param name="Pixels">Grey values row by row.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
public sealed record DisplayImage(ReadOnlyMemory<byte> Pixels, int Width, int Height)
{
    /// <summary>Contrast limit and tiles of the local equalisation (common practice, no source).</summary>
    private const double ClipLimit = 3;

    /// <summary>Renders a film, reduced so that its longer side has at most <paramref name="longestSide"/> pixels.</summary>
    /// <param name="film">The film.</param>
    /// <param name="longestSide">Longest side of the picture; films are never enlarged.</param>
    /// <param name="localContrast">Whether to equalise contrast locally (CLAHE), which brings out faint edges and noise alike.</param>
    public static DisplayImage Of(NormalisedFilm film, int longestSide = 4096, bool localContrast = false)
    {
        ArgumentNullException.ThrowIfNull(film);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(longestSide);
        NativeLibraries.EnsureLoadable();
        var radiograph = film.Film;
        var longest = Math.Max(radiograph.Width, radiograph.Height);
        var scale = Math.Min(1, longestSide / (double)longest);
        var size = new Size(
            Math.Max(1, (int)Math.Round(radiograph.Width * scale)), Math.Max(1, (int)Math.Round(radiograph.Height * scale)));
        using var source = Mat.FromPixelData(radiograph.Height, radiograph.Width, MatType.CV_16UC1, radiograph.Samples);
        using var reduced = new Mat();
        Cv2.Resize(source, reduced, size, 0, 0, InterpolationFlags.Area);

        var window = film.Window;
        var factor = (film.Polarity.BoneIsDark ? -255.0 : 255.0) / window.Range;
        var offset = film.Polarity.BoneIsDark ? window.High : window.Low;
        var pixels = new byte[size.Width * size.Height];
        using var target = Mat.FromPixelData(size.Height, size.Width, MatType.CV_8UC1, pixels);
        reduced.ConvertTo(target, MatType.CV_8UC1, factor, -offset * factor);
        if (localContrast)
        {
            using var equalise = Cv2.CreateCLAHE(ClipLimit, new Size(8, 8));
            using var equalised = new Mat();
            equalise.Apply(target, equalised);
            equalised.CopyTo(target);
        }

        return new DisplayImage(pixels, size.Width, size.Height);
    }

    /// <summary>The picture as a JPEG file, for pages that carry their pictures with them.</summary>
    /// <param name="quality">1 to 100.</param>
    public byte[] ToJpeg(int quality = 80)
    {
        NativeLibraries.EnsureLoadable();
        using var picture = Mat.FromPixelData(Height, Width, MatType.CV_8UC1, Pixels.ToArray());
        return picture.ToBytes(".jpg", new ImageEncodingParam(ImwriteFlags.JpegQuality, quality));
    }
}
