using System.Runtime.InteropServices;
using ElbowAssist.Phantom.Rendering.Field;
using ILGPU;
using ILGPU.Runtime;
using ILGPU.Runtime.CPU;
using ILGPU.Runtime.Cuda;
using Half = ILGPU.Half;

namespace ElbowAssist.Phantom.Gpu;

/// <summary>Renders batches of films on a GPU. Not thread-safe.</summary>
internal sealed class GpuFilmRenderer : IDisposable
{
    private readonly Context context;
    private readonly Accelerator accelerator;
    private readonly Action<Index1D, ArrayView<ElbowGeometry>, ArrayView<Half>, ArrayView<byte>, int> kernel;
    private readonly MemoryBuffer1D<ElbowGeometry, Stride1D.Dense> films;
    private readonly MemoryBuffer1D<Half, Stride1D.Dense> paths;
    private readonly MemoryBuffer1D<byte, Stride1D.Dense> labels;
    private readonly int size;

    private GpuFilmRenderer(Context context, Accelerator accelerator, int batch, int size)
    {
        this.context = context;
        this.accelerator = accelerator;
        this.size = size;
        kernel = accelerator
            .LoadAutoGroupedStreamKernel<Index1D, ArrayView<ElbowGeometry>, ArrayView<Half>, ArrayView<byte>, int>(RayKernel.Trace);
        films = accelerator.Allocate1D<ElbowGeometry>(batch);
        paths = accelerator.Allocate1D<Half>((long)batch * 5 * size * size);
        labels = accelerator.Allocate1D<byte>((long)batch * size * size);
    }

    /// <summary>Name of the device in use.</summary>
    public string Device => accelerator.Name;

    /// <summary>A renderer on the first NVIDIA GPU.</summary>
    /// <param name="batch">Most films per call.</param>
    /// <param name="size">Pixels along each side, a multiple of 8.</param>
    /// <exception cref="NotSupportedException">There is no such GPU.</exception>
    public static GpuFilmRenderer OnGpu(int batch, int size)
    {
        var created = Context.Create(builder => builder.Cuda().Optimize(OptimizationLevel.O2));
        if (created.GetCudaDevices().Count == 0)
        {
            created.Dispose();
            throw new NotSupportedException("No NVIDIA GPU was found.");
        }

        return new GpuFilmRenderer(created, created.CreateCudaAccelerator(0), batch, size);
    }

    /// <summary>A renderer that runs the same compiled kernel on the processor: slow, for tests.</summary>
    public static GpuFilmRenderer OnProcessor(int batch, int size)
    {
        var created = Context.Create(builder => builder.CPU());
        return new GpuFilmRenderer(created, created.CreateCPUAccelerator(0), batch, size);
    }

    /// <summary>Renders films into host arrays: half-precision paths [film, material, y, x] and labels [film, y, x].</summary>
    public void Render(ElbowGeometry[] geometries, byte[] pathBytes, byte[] labelBytes)
    {
        var count = geometries.Length;
        films.View.SubView(0, count).CopyFromCPU(geometries);
        kernel(count * size * size, films.View, paths.View, labels.View, size);
        accelerator.Synchronize();
        var halves = MemoryMarshal.Cast<byte, Half>(pathBytes.AsSpan());
        paths.View.SubView(0, (long)count * 5 * size * size).CopyToCPU(ref MemoryMarshal.GetReference(halves), halves.Length);
        labels.View.SubView(0, (long)count * size * size).CopyToCPU(labelBytes);
    }

    public void Dispose()
    {
        films.Dispose();
        paths.Dispose();
        labels.Dispose();
        accelerator.Dispose();
        context.Dispose();
    }
}
