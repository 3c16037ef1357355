using System.Reflection;
using System.Runtime.InteropServices;
using ElbowAssist.Phantom.NearMiss;
using ElbowAssist.Phantom.NearMiss.Rendering;
using ILGPU;
using ILGPU.Backends;
using ILGPU.Backends.EntryPoints;
using ILGPU.Backends.PTX;
using ILGPU.Runtime;
using ILGPU.Runtime.Cuda;

namespace ElbowAssist.Phantom.Gpu.Tests;

public sealed class NearMissKernelTests
{
    private const int Size = 16;

    [Fact]
    public void CompiledKernel_GivesTheFilmsOfPlainCode()
    {
        NearMissModel[] models = [NearMissSampler.Sample(1, Size).Model, NearMissSampler.Sample(5, Size).Model];
        var paths = new byte[models.Length * 5 * Size * Size * 2];
        using var renderer = GpuNearMissRenderer.OnProcessor(models.Length, Size);
        renderer.Render(models, paths);
        var halves = MemoryMarshal.Cast<byte, System.Half>(paths);
        for (var film = 0; film < models.Length; film++)
        {
            var plain = NearMissRenderer.Render(models[film], Size, Size);
            for (var i = 0; i < Size * Size; i++)
            {
                Assert.Equal(plain.Soft[i], (float)halves[(film * 5 * Size * Size) + i], 0.2f);
                Assert.Equal(plain.Bone[i], (float)halves[((film * 5) + 2) * Size * Size + i], 0.05f);
            }
        }
    }

    /// <summary>The kernel must translate for a GPU although none is at hand here.</summary>
    [Fact]
    public void Kernel_TranslatesToPtx()
    {
        using var context = Context.Create(builder => builder.Optimize(OptimizationLevel.O2));
        using var backend = new PTXBackend(
            context, new CudaCapabilityContext(CudaArchitecture.SM_90), CudaArchitecture.SM_90, CudaInstructionSet.ISA_78, null!);
        var method = typeof(NearMissKernel).GetMethod(nameof(NearMissKernel.Trace), BindingFlags.Static | BindingFlags.NonPublic)!;
        var compiled = backend.Compile(EntryPointDescription.FromImplicitlyGroupedKernel(method), KernelSpecialization.Empty);
        Assert.Contains(".entry", ((PTXCompiledKernel)compiled).PTXAssembly, StringComparison.Ordinal);
    }
}
