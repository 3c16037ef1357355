using OpenCvSharp;

namespace ElbowAssist.Imaging.Normalisation;

/// <summary>A film reduced by averaging whole blocks; <see cref="ScaleX"/> film pixels make one of its pixels.</summary>
internal sealed class FilmLevel : IDisposable
{
    private readonly GreySamples? reduced;

    private FilmLevel(ushort[] samples, GreySamples? reduced, int width, int height, double scaleX, double scaleY)
    {
        Samples = samples;
        this.reduced = reduced;
        Width = width;
        Height = height;
        ScaleX = scaleX;
        ScaleY = scaleY;
    }

    /// <summary>Grey values row by row; the array may be longer.</summary>
    public ushort[] Samples { get; }

    /// <summary>The values.</summary>
    public ReadOnlySpan<ushort> Values => Samples.AsSpan(0, Width * Height);

    public int Width { get; }

    public int Height { get; }

    public double ScaleX { get; }

    public double ScaleY { get; }

    public static FilmLevel Reduce(Radiograph film, int factor)
    {
        if (factor <= 1)
        {
            return new FilmLevel(film.Samples, null, film.Width, film.Height, 1, 1);
        }

        var width = Math.Max(1, (film.Width + (factor / 2)) / factor);
        var height = Math.Max(1, (film.Height + (factor / 2)) / factor);
        var rented = GreySamples.Pooled(width, height);
        using var source = Mat.FromPixelData(film.Height, film.Width, MatType.CV_16UC1, film.Samples);
        using var target = Mat.FromPixelData(height, width, MatType.CV_16UC1, rented.Array);
        Cv2.Resize(source, target, new Size(width, height), 0, 0, InterpolationFlags.Area);
        return new FilmLevel(rented.Array, rented, width, height, (double)film.Width / width, (double)film.Height / height);
    }

    /// <summary>Gives the memory of a reduced film back; the film itself keeps its own.</summary>
    public void Dispose() => reduced?.Dispose();
}
