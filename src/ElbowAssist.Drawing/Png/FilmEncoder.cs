using SkiaSharp;

namespace ElbowAssist.Drawing.Png;

/// <summary>A film for the eye as an encoded picture.</summary>
internal static class FilmEncoder
{
    private const int JpegQuality = 85;

    public static byte[] Jpeg(GreyPicture film, int longestSide)
    {
        using var image = Image(film);
        var scale = Math.Min(1, longestSide / (double)Math.Max(film.Width, film.Height));
        var info = new SKImageInfo(
            Math.Max(1, (int)Math.Round(film.Width * scale)),
            Math.Max(1, (int)Math.Round(film.Height * scale)),
            SKColorType.Gray8,
            SKAlphaType.Opaque);
        using var small = new SKBitmap(info);
        using var pixels = small.PeekPixels();
        image.ScalePixels(pixels, Sampling);
        using var data = small.Encode(SKEncodedImageFormat.Jpeg, JpegQuality);
        return data.ToArray();
    }

    public static SKImage Image(GreyPicture film) =>
        SKImage.FromPixelCopy(new SKImageInfo(film.Width, film.Height, SKColorType.Gray8, SKAlphaType.Opaque), film.Pixels.ToArray());

    public static SKSamplingOptions Sampling => new(SKFilterMode.Linear, SKMipmapMode.Linear);
}
