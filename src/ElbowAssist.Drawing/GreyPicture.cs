namespace ElbowAssist.Drawing;

/// <summary>A film prepared for the eye: 8-bit grey, bone bright, windowed, perhaps smaller than the film itself.</summary>
public sealed class GreyPicture
{
    /// <summary>Wraps pixels without copying them.</summary>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="pixels">Grey values by rows, 0 black to 255 white.</param>
    /// <exception cref="ArgumentException">The number of pixels is not width times height.</exception>
    public GreyPicture(int width, int height, ReadOnlyMemory<byte> pixels)
    {
        if (width <= 0 || height <= 0 || pixels.Length != (long)width * height)
        {
            throw new ArgumentException("A picture holds width times height pixels.", nameof(pixels));
        }

        (Width, Height, Pixels) = (width, height, pixels);
    }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>Grey values by rows.</summary>
    public ReadOnlyMemory<byte> Pixels { get; }
}
