using ElbowAssist.Phantom.NearMiss.Rendering;
using ILGPU;
using Half = ILGPU.Half;

namespace ElbowAssist.Phantom.Gpu;

/// <summary>The kernel of near misses: one thread per pixel of a batch of scenes.</summary>
internal static class NearMissKernel
{
    /// <summary>Walks the ray of one pixel.</summary>
    /// <param name="index">Number of the pixel in tile order over all films.</param>
    /// <param name="films">One entry per film.</param>
    /// <param name="solids">Solids of all films.</param>
    /// <param name="parts">Parts of all films.</param>
    /// <param name="paths">Film by film: soft, fat, bone, metal, cast, each row by row; millimetres.</param>
    /// <param name="size">Pixels along each side, a multiple of the tile.</param>
    internal static void Trace(
        Index1D index,
        ArrayView<NearMissFilm> films,
        ArrayView<NearMissSolid> solids,
        ArrayView<NearMissPart> parts,
        ArrayView<Half> paths,
        int size)
    {
        var area = size * size;
        var film = index.X / area;
        var inFilm = index.X - (film * area);
        var tile = inFilm / (RayKernel.Tile * RayKernel.Tile);
        var inTile = inFilm - (tile * RayKernel.Tile * RayKernel.Tile);
        var tiles = size / RayKernel.Tile;
        var y = ((tile / tiles) * RayKernel.Tile) + (inTile / RayKernel.Tile);
        var x = ((tile % tiles) * RayKernel.Tile) + (inTile % RayKernel.Tile);
        ref var entry = ref films[film];
        var store = new DeviceStore(solids, parts, entry.SolidFirst, entry.PartFirst);
        var ray = NearMissIntegrator.Trace(in entry.Scene, store, x + 0.5f, y + 0.5f);
        var first = (film * 5 * area) + (y * size) + x;
        paths[first] = (Half)ray.Soft;
        paths[first + area] = (Half)ray.Fat;
        paths[first + (2 * area)] = (Half)ray.Bone;
        paths[first + (3 * area)] = (Half)ray.Metal;
        paths[first + (4 * area)] = (Half)ray.Cast;
    }

    private readonly struct DeviceStore(ArrayView<NearMissSolid> solids, ArrayView<NearMissPart> parts, int solidFirst, int partFirst)
        : INearMissStore
    {
        private readonly ArrayView<NearMissSolid> solids = solids;
        private readonly ArrayView<NearMissPart> parts = parts;
        private readonly int solidFirst = solidFirst;
        private readonly int partFirst = partFirst;

        public NearMissPart Part(int index) => parts[partFirst + index];

        public NearMissSolid Solid(int index) => solids[solidFirst + index];
    }
}

/// <summary>A scene and where its solids and parts begin among those of the batch.</summary>
internal struct NearMissFilm
{
    public NearMissScene Scene;
    public int SolidFirst, PartFirst;
}
