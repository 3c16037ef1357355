using System.Reflection;
using System.Runtime.InteropServices;
using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Rendering;
using ILGPU;
using ILGPU.Backends;
using ILGPU.Backends.EntryPoints;
using ILGPU.Backends.PTX;
using ILGPU.Runtime;
using ILGPU.Runtime.Cuda;

namespace ElbowAssist.Phantom.Gpu.Tests;

public sealed class KernelTests
{
    private const int Size = 8;

    [Theory]
    [InlineData(1_000_003UL)]
    [InlineData(1_000_007UL)]
    public void CompiledKernel_GivesTheFilmOfPlainCode(ulong seed)
    {
        var setup = FilmSetup.ForTraining(seed, View.Lateral, Size, crop: true);
        var plain = FilmRenderer.Render(setup.Geometry, Size, Size);
        var paths = new byte[5 * Size * Size * 2];
        var labels = new byte[Size * Size];
        using var renderer = GpuFilmRenderer.OnProcessor(1, Size);
        renderer.Render([setup.Geometry], paths, labels);
        var halves = MemoryMarshal.Cast<byte, System.Half>(paths);
        for (var i = 0; i < Size * Size; i++)
        {
            Assert.Equal(plain.Soft[i], (float)halves[i], 0.1f);
            Assert.Equal(plain.Bone[i], (float)halves[i + (2 * Size * Size)], 0.05f);
        }

        Assert.Equal(plain.Labels, labels);
    }

    /// <summary>The kernel must translate for a GPU although none is at hand here.</summary>
    [Fact]
    public void Kernel_TranslatesToPtx()
    {
        using var context = Context.Create(builder => builder.Optimize(OptimizationLevel.O2));
        using var backend = new PTXBackend(
            context, new CudaCapabilityContext(CudaArchitecture.SM_90), CudaArchitecture.SM_90, CudaInstructionSet.ISA_78, null!);
        var method = typeof(RayKernel).GetMethod(nameof(RayKernel.Trace), BindingFlags.Static | BindingFlags.NonPublic)!;
        var compiled = backend.Compile(
            EntryPointDescription.FromImplicitlyGroupedKernel(method), KernelSpecialization.Empty);
        Assert.Contains(".entry", ((PTXCompiledKernel)compiled).PTXAssembly, StringComparison.Ordinal);
    }
}
