using System.Runtime.InteropServices;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ILGPU;
using ILGPU.Runtime;
using ILGPU.Runtime.CPU;
using ILGPU.Runtime.Cuda;
using Half = ILGPU.Half;

namespace ElbowAssist.Phantom.Gpu;

/// <summary>Renders batches of near misses on a GPU. Not thread-safe.</summary>
internal sealed class GpuNearMissRenderer : IDisposable
{
    private const int SolidsPerFilm = 96;
    private const int PartsPerFilm = 320;
    private readonly Context context;
    private readonly Accelerator accelerator;
    private readonly Action<Index1D, ArrayView<NearMissFilm>, ArrayView<NearMissSolid>, ArrayView<NearMissPart>, ArrayView<Half>, int> kernel;
    private readonly MemoryBuffer1D<NearMissFilm, Stride1D.Dense> films;
    private readonly MemoryBuffer1D<NearMissSolid, Stride1D.Dense> solids;
    private readonly MemoryBuffer1D<NearMissPart, Stride1D.Dense> parts;
    private readonly MemoryBuffer1D<Half, Stride1D.Dense> paths;
    private readonly int size;

    private GpuNearMissRenderer(Context context, Accelerator accelerator, int batch, int size)
    {
        this.context = context;
        this.accelerator = accelerator;
        this.size = size;
        kernel = accelerator.LoadAutoGroupedStreamKernel<
            Index1D, ArrayView<NearMissFilm>, ArrayView<NearMissSolid>, ArrayView<NearMissPart>, ArrayView<Half>, int>(NearMissKernel.Trace);
        films = accelerator.Allocate1D<NearMissFilm>(batch);
        solids = accelerator.Allocate1D<NearMissSolid>((long)batch * SolidsPerFilm);
        parts = accelerator.Allocate1D<NearMissPart>((long)batch * PartsPerFilm);
        paths = accelerator.Allocate1D<Half>((long)batch * 5 * size * size);
    }

    /// <summary>A renderer on the first NVIDIA GPU.</summary>
    /// <param name="batch">Most films per call.</param>
    /// <param name="size">Pixels along each side, a multiple of 8.</param>
    /// <exception cref="NotSupportedException">There is no such GPU.</exception>
    public static GpuNearMissRenderer OnGpu(int batch, int size)
    {
        var created = Context.Create(builder => builder.Cuda().Optimize(OptimizationLevel.O2));
        if (created.GetCudaDevices().Count == 0)
        {
            created.Dispose();
            throw new NotSupportedException("No NVIDIA GPU was found.");
        }

        return new GpuNearMissRenderer(created, created.CreateCudaAccelerator(0), batch, size);
    }

    /// <summary>A renderer that runs the same compiled kernel on the processor: slow, for tests.</summary>
    public static GpuNearMissRenderer OnProcessor(int batch, int size)
    {
        var created = Context.Create(builder => builder.CPU());
        return new GpuNearMissRenderer(created, created.CreateCPUAccelerator(0), batch, size);
    }

    /// <summary>Renders scenes into a host array of half-precision paths [film, material, y, x].</summary>
    public void Render(IReadOnlyList<NearMissModel> models, byte[] pathBytes)
    {
        var entries = new NearMissFilm[models.Count];
        var allSolids = new List<NearMissSolid>();
        var allParts = new List<NearMissPart>();
        for (var i = 0; i < models.Count; i++)
        {
            entries[i] = new NearMissFilm { Scene = models[i].Scene, SolidFirst = allSolids.Count, PartFirst = allParts.Count };
            allSolids.AddRange(models[i].Solids);
            allParts.AddRange(models[i].Parts);
        }

        films.View.SubView(0, entries.Length).CopyFromCPU(entries);
        solids.View.SubView(0, allSolids.Count).CopyFromCPU([.. allSolids]);
        parts.View.SubView(0, allParts.Count).CopyFromCPU([.. allParts]);
        kernel(entries.Length * size * size, films.View, solids.View, parts.View, paths.View, size);
        accelerator.Synchronize();
        var halves = MemoryMarshal.Cast<byte, Half>(pathBytes.AsSpan());
        paths.View.SubView(0, (long)entries.Length * 5 * size * size).CopyToCPU(ref MemoryMarshal.GetReference(halves), halves.Length);
    }

    public void Dispose()
    {
        films.Dispose();
        solids.Dispose();
        parts.Dispose();
        paths.Dispose();
        accelerator.Dispose();
        context.Dispose();
    }
}
