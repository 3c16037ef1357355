using OpenCvSharp;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>A film reduced by averaging whole blocks; <see cref="ScaleX"/> film pixels make one of its pixels.</summary>
internal sealed class FilmLevel
{
    private FilmLevel(ushort[] samples, int width, int height, double scaleX, double scaleY)
    {
        Samples = samples;
        Width = width;
        Height = height;
        ScaleX = scaleX;
        ScaleY = scaleY;
    }

    public ushort[] Samples { get; }

    public int Width { get; }

    public int Height { get; }

    public double ScaleX { get; }

    public double ScaleY { get; }

    public static FilmLevel Reduce(Radiograph film, int factor)
    {
        if (factor <= 1)
        {
            return new FilmLevel(film.Samples, film.Width, film.Height, 1, 1);
        }

        var width = Math.Max(1, (film.Width + (factor / 2)) / factor);
        var height = Math.Max(1, (film.Height + (factor / 2)) / factor);
        var samples = Radiograph.Allocate(width, height);
        using var source = Mat.FromPixelData(film.Height, film.Width, MatType.CV_16UC1, film.Samples);
        using var target = Mat.FromPixelData(height, width, MatType.CV_16UC1, samples);
        Cv2.Resize(source, target, new Size(width, height), 0, 0, InterpolationFlags.Area);
        return new FilmLevel(samples, width, height, (double)film.Width / width, (double)film.Height / height);
    }
}
