using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Smooth random fields fixed by a seed; the texture of spongy bone and muscle.</summary>
internal static class TissueNoise
{
    /// <summary>A well-mixed 32-bit value (the "lowbias32" integer hash, C. Wellons, public domain).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static uint Hash(uint x)
    {
        x ^= x >> 16;
        x *= 0x7feb352dU;
        x ^= x >> 15;
        x *= 0x846ca68bU;
        return x ^ (x >> 16);
    }

    /// <summary>Uniform in 0…1 for a lattice point.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static float Lattice(int i, int j, int k, uint seed) =>
        (Hash(((uint)i * 73856093U) ^ ((uint)j * 19349663U) ^ ((uint)k * 83492791U) ^ seed) & 0xffffffU) * (1f / 16777215f);

    /// <summary>Smooth noise in −1…1, one lattice cell per unit.</summary>
    public static float Smooth(Vec3 p, uint seed)
    {
        int i = Floor(p.X), j = Floor(p.Y), k = Floor(p.Z);
        float x = Fade(p.X - i), y = Fade(p.Y - j), z = Fade(p.Z - k);
        var near = Distance.Mix(
            Distance.Mix(Lattice(i, j, k, seed), Lattice(i + 1, j, k, seed), x),
            Distance.Mix(Lattice(i, j + 1, k, seed), Lattice(i + 1, j + 1, k, seed), x),
            y);
        var far = Distance.Mix(
            Distance.Mix(Lattice(i, j, k + 1, seed), Lattice(i + 1, j, k + 1, seed), x),
            Distance.Mix(Lattice(i, j + 1, k + 1, seed), Lattice(i + 1, j + 1, k + 1, seed), x),
            y);
        return (2f * Distance.Mix(near, far, z)) - 1f;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Fade(float t) => t * t * (3f - (2f * t));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Floor(float x)
    {
        var i = (int)x;
        return x < i ? i - 1 : i;
    }
}
