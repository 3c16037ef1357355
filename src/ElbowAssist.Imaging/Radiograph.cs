namespace ElbowAssist.Imaging;

/// <summary>
/// A decoded radiograph: one grey sample per pixel, rows from top to bottom, and what is known about it. Immutable;
/// safe to share between threads. Coordinates elsewhere are continuous pixels of this grid, (0,0) being the top-left
/// corner of the top-left pixel. A radiograph read for reuse gives its memory to the next one when disposed, together with
/// those that share its pixels; any other need not be disposed.
/// </summary>
public sealed class Radiograph : IDisposable
{
    private readonly GreySamples samples;

    private Radiograph(GreySamples samples, int width, int height, RadiographFacts facts)
    {
        this.samples = samples;
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
    /// <exception cref="ObjectDisposedException">The memory has been given back.</exception>
    public ReadOnlySpan<ushort> Pixels => samples.Values;

    /// <summary>The same values for native filters, which read them in place; the array may be longer.</summary>
    internal ushort[] Samples => samples.Array;

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

        var copy = GreySamples.Own(width, height);
        pixels.CopyTo(copy.Values);
        return new Radiograph(copy, width, height, facts);
    }

    /// <summary>The same pixels with other facts, e.g. a spacing read from a sidecar; nothing is copied.</summary>
    public Radiograph With(RadiographFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return new Radiograph(samples, Width, Height, facts);
    }

    /// <inheritdoc/>
    public void Dispose() => samples.Dispose();

    /// <summary>A radiograph that takes over samples.</summary>
    internal static Radiograph TakeOver(GreySamples samples, int width, int height, RadiographFacts facts) =>
        new(samples, width, height, facts);
}
