namespace ElbowAssist.Phantom.Exposure.Chain;

/// <summary>One plane of float pixels, row by row, that grows when needed and is used again from film to film.</summary>
internal sealed class ImagePlane
{
    public float[] Pixels { get; private set; } = [];

    public int Width { get; private set; }

    public int Height { get; private set; }

    public int Count => Width * Height;

    public Span<float> Row(int y) => Pixels.AsSpan(y * Width, Width);

    public ImagePlane Resize(int width, int height)
    {
        Width = width;
        Height = height;
        if (Pixels.Length < width * height)
        {
            Pixels = new float[width * height];
        }

        return this;
    }

    public void CopyFrom(ImagePlane other)
    {
        Resize(other.Width, other.Height);
        Array.Copy(other.Pixels, Pixels, Count);
    }
}
