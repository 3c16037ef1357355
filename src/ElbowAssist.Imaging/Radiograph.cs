namespace ElbowAssist.Imaging;

/// <summary>
/// A decoded radiograph: one grey sample per pixel, rows from top to bottom, and what is known about it. Immutable;
/// safe to share between threads. Coordinates elsewhere are continuous pixels of this grid, (0,0) being the top-left
/// corner of the top-left pixel.
/// </summary>
public sealed class Radiograph
{
    private Radiograph(ushort[] samples, int width, int height, RadiographFacts facts)
    {
        Samples = samples;
        Width = width;
        Height = height;
        Facts = facts;
    }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>What is known of the pixels.</summary>
    public RadiographFacts Facts { get; }

    /// <summary>
    /// Grey values row by row, Width × Height of them. From files they span 0 to 65 535 (8-bit samples times 257);
    /// pixels handed over keep the values they came with.
    /// </summary>
    public ReadOnlySpan<ushort> Pixels => Samples;

    /// <summary>The same values, on the pinned heap so that native filters read them in place.</summary>
    internal ushort[] Samples { get; }

    /// <summary>A radiograph from pixels decoded elsewhere; the values are copied.</summary>
    /// <exception cref="ArgumentException">The number of pixels is not width × height, or a size is not positive.</exception>
    public static Radiograph FromPixels(ReadOnlySpan<ushort> pixels, int width, int height, RadiographFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        if (pixels.Length != (long)width * height)
        {
            throw new ArgumentException("The number of pixels must be width × height.", nameof(pixels));
        }

        var samples = Allocate(width, height);
        pixels.CopyTo(samples);
        return new Radiograph(samples, width, height, facts);
    }

    /// <summary>The same pixels with other facts, e.g. a spacing read from a sidecar; nothing is copied.</summary>
    public Radiograph With(RadiographFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return new Radiograph(Samples, Width, Height, facts);
    }

    /// <summary>A radiograph that takes over an array from <see cref="Allocate"/>.</summary>
    internal static Radiograph TakeOver(ushort[] samples, int width, int height, RadiographFacts facts) =>
        new(samples, width, height, facts);

    internal static ushort[] Allocate(int width, int height) =>
        GC.AllocateUninitializedArray<ushort>(checked(width * height), pinned: true);
}
