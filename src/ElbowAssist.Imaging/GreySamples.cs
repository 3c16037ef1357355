using System.Buffers;

namespace ElbowAssist.Imaging;

/// <summary>Grey values row by row in an array of their own, or in one from a pool that the next film uses again.</summary>
internal sealed class GreySamples : IDisposable
{
    private readonly int count;
    private readonly bool pooled;
    private ushort[]? array;

    private GreySamples(ushort[] array, int count, bool pooled) => (this.array, this.count, this.pooled) = (array, count, pooled);

    /// <summary>The array, which may be longer than the values.</summary>
    /// <exception cref="ObjectDisposedException">The array has been given back.</exception>
    public ushort[] Array => array ?? throw new ObjectDisposedException(nameof(Radiograph));

    /// <summary>The values.</summary>
    public Span<ushort> Values => Array.AsSpan(0, count);

    /// <summary>An array of their own, on the pinned heap so that native filters need not pin it.</summary>
    public static GreySamples Own(int width, int height)
    {
        var length = checked(width * height);
        return new GreySamples(GC.AllocateUninitializedArray<ushort>(length, pinned: true), length, pooled: false);
    }

    /// <summary>An array from the pool.</summary>
    public static GreySamples Pooled(int width, int height)
    {
        var length = checked(width * height);
        return new GreySamples(ArrayPool<ushort>.Shared.Rent(length), length, pooled: true);
    }

    /// <summary>Gives a pooled array back; does nothing to one of their own.</summary>
    public void Dispose()
    {
        if (pooled && Interlocked.Exchange(ref array, null) is { } rented)
        {
            ArrayPool<ushort>.Shared.Return(rented);
        }
    }
}
