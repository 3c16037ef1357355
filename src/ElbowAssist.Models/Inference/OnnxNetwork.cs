using System.Collections.Concurrent;
using ElbowAssist.Models.Folders;
using Microsoft.ML.OnnxRuntime;

namespace ElbowAssist.Models.Inference;

/// <summary>
/// An ONNX session with fixed input and output shapes. Shared between threads: each run takes a <see cref="NetworkBuffers"/>
/// from a pool, so that nothing is allocated per run once the pool is warm.
/// </summary>
internal sealed class OnnxNetwork : IDisposable
{
    private readonly InferenceSession session;
    private readonly RunOptions runOptions = new();
    private readonly ConcurrentBag<NetworkBuffers> pool = [];
    private readonly string inputName;
    private readonly IReadOnlyDictionary<string, long[]> outputShapes;
    private readonly long[] inputShape;

    /// <summary>Creates the session and checks the names and shapes of the tensors.</summary>
    /// <param name="folder">The model folder.</param>
    /// <param name="outputShapes">Wanted outputs by tensor name; −1 stands for any positive size.</param>
    /// <param name="threads">Threads within one run.</param>
    /// <exception cref="ModelFolderException">The network does not load or does not fit the manifest.</exception>
    public OnnxNetwork(ModelFolder folder, IReadOnlyDictionary<string, long[]> outputShapes, int threads)
    {
        var manifest = folder.Manifest;
        inputName = manifest.Input.Name;
        inputShape = [1, manifest.Input.Channels, manifest.Input.Height, manifest.Input.Width];
        session = CreateSession(folder, threads);
        try
        {
            Match(folder.Path, session.InputMetadata, inputName, inputShape);
            if (session.InputMetadata.Count != 1)
            {
                throw new ModelFolderException(folder.Path, "has a network with more than one input.");
            }

            this.outputShapes = outputShapes.ToDictionary(
                o => o.Key, o => Match(folder.Path, session.OutputMetadata, o.Key, o.Value), StringComparer.Ordinal);
        }
        catch
        {
            session.Dispose();
            throw;
        }
    }

    /// <summary>Buffers for one run; give them back by <see cref="Return"/>.</summary>
    public NetworkBuffers Rent() =>
        pool.TryTake(out var buffers) ? buffers : new NetworkBuffers(inputName, inputShape, outputShapes);

    public void Return(NetworkBuffers buffers) => pool.Add(buffers);

    /// <summary>Runs the network from the input of the buffers into their outputs.</summary>
    /// <exception cref="InvalidOperationException">The runtime failed.</exception>
    public void Run(NetworkBuffers buffers)
    {
        try
        {
            session.Run(runOptions, buffers.InputNames, buffers.InputValues, buffers.OutputNames, buffers.OutputValues);
        }
        catch (OnnxRuntimeException e)
        {
            throw new InvalidOperationException("The network failed to run.", e);
        }
    }

    public void Dispose()
    {
        foreach (var buffers in pool)
        {
            buffers.Dispose();
        }

        runOptions.Dispose();
        session.Dispose();
    }

    private static InferenceSession CreateSession(ModelFolder folder, int threads)
    {
        RuntimeReports.TurnOff();

        // Spinning threads lose against any other process on the machine. All optimisations are pinned on because
        // output bits differ between levels.
        using var options = new SessionOptions
        {
            IntraOpNumThreads = threads,
            InterOpNumThreads = 1,
            ExecutionMode = ExecutionMode.ORT_SEQUENTIAL,
            GraphOptimizationLevel = GraphOptimizationLevel.ORT_ENABLE_ALL,
            LogSeverityLevel = OrtLoggingLevel.ORT_LOGGING_LEVEL_FATAL,
        };
        options.AddSessionConfigEntry("session.intra_op.allow_spinning", "0");
        options.AddSessionConfigEntry("session.inter_op.allow_spinning", "0");
        try
        {
            return new InferenceSession(folder.Onnx, options);
        }
        catch (OnnxRuntimeException e)
        {
            throw new ModelFolderException(folder.Path, $"has a {folder.Manifest.Onnx.File} that the runtime cannot load.", e);
        }
    }

    private static long[] Match(
        string folder, IReadOnlyDictionary<string, NodeMetadata> tensors, string name, long[] wanted)
    {
        if (!tensors.TryGetValue(name, out var metadata))
        {
            throw new ModelFolderException(folder, $"has a network without the tensor {name} that model.json names.");
        }

        var actual = metadata.Dimensions;
        var fits = metadata.ElementType == typeof(float) && actual.Length == wanted.Length &&
            actual.Zip(wanted).All(d => d.First == d.Second || (d.First < 0 && d.Second > 0) || (d.Second < 0 && d.First > 0));
        if (!fits)
        {
            throw new ModelFolderException(
                folder, $"has a tensor {name} of shape [{string.Join(", ", actual)}], but model.json makes it [{string.Join(", ", wanted)}].");
        }

        return [.. actual.Zip(wanted).Select(d => d.First < 0 ? d.Second : d.First)];
    }
}
