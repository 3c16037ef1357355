using ElbowAssist.Models.Folders;
using Microsoft.ML.OnnxRuntime;

namespace ElbowAssist.Benchmarks;

/// <summary>ONNX Runtime alone on a network of a model folder, with bound tensors and the options the program uses.</summary>
internal sealed class BareNetwork : IDisposable
{
    private readonly InferenceSession session;
    private readonly RunOptions options = new();
    private readonly float[] input;
    private readonly OrtValue bound;
    private readonly string[] inputs;
    private readonly string[] outputs;
    private readonly OrtValue[] results;

    public BareNetwork(ModelFolder folder)
    {
        using var settings = new SessionOptions { IntraOpNumThreads = 1, InterOpNumThreads = 1, GraphOptimizationLevel = GraphOptimizationLevel.ORT_ENABLE_ALL };
        settings.AddSessionConfigEntry("session.intra_op.allow_spinning", "0");
        session = new InferenceSession(Path.Combine(folder.Path, folder.Manifest.Onnx.File), settings);
        var side = folder.Manifest.Input.Width;
        input = new float[side * side];
        bound = OrtValue.CreateTensorValueFromMemory(input, [1, 1, side, side]);
        inputs = [folder.Manifest.Input.Name];
        outputs = [.. session.OutputNames];
        results = [.. outputs.Select(name => session.OutputMetadata[name].Dimensions.Select(d => (long)Math.Max(1, d)).ToArray()).Select(shape => OrtValue.CreateTensorValueFromMemory(new float[shape.Aggregate(1L, (a, b) => a * b)], shape))];
    }

    public Span<float> Input => input;

    public void Run() => session.Run(options, inputs, [bound], outputs, results);

    public void Dispose()
    {
        bound.Dispose();
        foreach (var result in results)
        {
            result.Dispose();
        }

        options.Dispose();
        session.Dispose();
    }
}
