using System.Runtime.CompilerServices;

namespace ElbowAssist.Phantom.Rendering.Field;

/// <summary>Smooth random fields fixed by a seed; the texture of spongy bone and muscle.</summary>
internal static class TissueNoise
{
    /// <summary>Uniform in 0…1 from lattice bits that were multiplied and combined before.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Mixed(uint x)
    {
        x ^= x >> 15;
        x *= 0x2c1b3c6dU;
        x ^= x >> 12;
        x *= 0x297a2d39U;
        return (x >> 8) * (1f / 16777216f);
    }

    /// <summary>Smooth noise in −1…1, one lattice cell per unit.</summary>
    public static float Smooth(Vec3 p, uint seed)
    {
        int i = Floor(p.X), j = Floor(p.Y), k = Floor(p.Z);
        float x = Fade(p.X - i), y = Fade(p.Y - j), z = Fade(p.Z - k);
        var i0 = ((uint)i * 0x8da6b343U) + seed;
        var i1 = i0 + 0x8da6b343U;
        uint j0 = (uint)j * 0xd8163841U, j1 = j0 + 0xd8163841U, k0 = (uint)k * 0xcb1ab31fU, k1 = k0 + 0xcb1ab31fU;
        var near = Distance.Mix(
            Distance.Mix(Mixed(i0 ^ j0 ^ k0), Mixed(i1 ^ j0 ^ k0), x),
            Distance.Mix(Mixed(i0 ^ j1 ^ k0), Mixed(i1 ^ j1 ^ k0), x),
            y);
        var far = Distance.Mix(
            Distance.Mix(Mixed(i0 ^ j0 ^ k1), Mixed(i1 ^ j0 ^ k1), x),
            Distance.Mix(Mixed(i0 ^ j1 ^ k1), Mixed(i1 ^ j1 ^ k1), x),
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

    /// <summary>
    /// Tissue under a surface, textured along the X axis of <paramref name="p"/> (the direction of the trabeculae).
    /// </summary>
    /// <param name="p">Place, first coordinate along the bone, millimetres.</param>
    /// <param name="depth">Depth below the surface; the inside is only textured where it is reached.</param>
    /// <param name="cortex">Mean thickness of the shell.</param>
    /// <param name="spongy">Mean bone volume fraction inside.</param>
    /// <param name="seed">Seed of the texture.</param>
    public static BoneTissue Texture(Vec3 p, float depth, float cortex, float spongy, uint seed)
    {
        var coarse = Smooth(new Vec3(p.X * 0.07f, p.Y * 0.3f, p.Z * 0.3f), seed);
        var shell = cortex * (1f + (0.22f * coarse));
        if (depth < 0.6f * shell)
        {
            return new BoneTissue(shell, 0f);
        }

        var fine = Smooth(new Vec3(p.X * 0.3f, p.Y * 0.8f, p.Z * 0.8f), seed + 1u);
        return new BoneTissue(shell, MathF.Max(spongy * (1f + (2.2f * fine) + (0.35f * coarse)), 0f));
    }
}
