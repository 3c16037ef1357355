using ElbowAssist.Phantom.Rendering.Field;
using ILGPU;
using Half = ILGPU.Half;

namespace ElbowAssist.Phantom.Gpu;

/// <summary>The kernel: one thread per pixel of a batch of films.</summary>
internal static class RayKernel
{
    /// <summary>Threads of a tile of pixels lie side by side, so that neighbouring rays take the same branches.</summary>
    internal const int Tile = 8;

    /// <summary>Walks the ray of one pixel.</summary>
    /// <param name="index">Number of the pixel in tile order over all films.</param>
    /// <param name="films">One geometry per film.</param>
    /// <param name="paths">Film by film: soft, fat, bone, metal, cast, each row by row; millimetres.</param>
    /// <param name="labels">Film by film, row by row.</param>
    /// <param name="size">Pixels along each side, a multiple of the tile.</param>
    internal static void Trace(
        Index1D index, ArrayView<ElbowGeometry> films, ArrayView<Half> paths, ArrayView<byte> labels, int size)
    {
        var area = size * size;
        var film = index.X / area;
        var inFilm = index.X - (film * area);
        var tile = inFilm / (Tile * Tile);
        var inTile = inFilm - (tile * Tile * Tile);
        var tiles = size / Tile;
        var y = ((tile / tiles) * Tile) + (inTile / Tile);
        var x = ((tile % tiles) * Tile) + (inTile % Tile);
        ref var geometry = ref films[film];
        var ray = RayIntegrator.Trace(in geometry, x + 0.5f, y + 0.5f);
        var pixel = (y * size) + x;
        var first = (film * 5 * area) + pixel;
        paths[first] = (Half)ray.Soft;
        paths[first + area] = (Half)ray.Fat;
        paths[first + (2 * area)] = (Half)ray.Bone;
        paths[first + (3 * area)] = (Half)ray.Metal;
        paths[first + (4 * area)] = (Half)ray.Cast;
        labels[(film * area) + pixel] = ray.Labels;
    }
}
