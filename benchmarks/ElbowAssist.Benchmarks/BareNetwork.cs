using ElbowAssist.Models.Folders;
using Microsoft.ML.OnnxRuntime;

namespace ElbowAssist.Benchmarks;

/// <summary>ONNX Runtime alone on a network of a model folder, with bound tensors and the options the program uses.</summary>
internal sealed class BareNetwork : IDisposable
{
    private readonly InferenceSession session;
    private readonly bool owned;
    private readonly RunOptions options = new();
    private readonly float[] input;
    private readonly OrtValue bound;
    private readonly string[] inputs;
    private readonly string[] outputs;
    private readonly OrtValue[] results;

    public BareNetwork(ModelFolder folder)
        : this(Session(folder), folder.Manifest.Input.Name, folder.Manifest.Input.Width, owned: true)
    {
    }

    private BareNetwork(InferenceSession session, string name, int side, bool owned)
    {
        (this.session, this.owned, Side) = (session, owned, side);
        input = new float[side * side];
        bound = OrtValue.CreateTensorValueFromMemory(input, [1, 1, side, side]);
        inputs = [name];
        outputs = [.. session.OutputNames];
        results = [.. outputs.Select(o => session.OutputMetadata[o].Dimensions.Select(d => (long)Math.Max(1, d)).ToArray()).Select(shape => OrtValue.CreateTensorValueFromMemory(new float[shape.Aggregate(1L, (a, b) => a * b)], shape))];
    }

    public int Side { get; }

    public Span<float> Input => input;

    /// <summary>The same network with the same input in tensors of its own, to be run by another thread.</summary>
    public BareNetwork Beside()
    {
        var other = new BareNetwork(session, inputs[0], Side, owned: false);
        input.CopyTo(other.input, 0);
        return other;
    }

    public void Run() => session.Run(options, inputs, [bound], outputs, results);

    public void Dispose()
    {
        bound.Dispose();
        foreach (var result in results)
        {
            result.Dispose();
        }

        options.Dispose();
        if (owned)
        {
            session.Dispose();
        }
    }

    private static InferenceSession Session(ModelFolder folder)
    {
        using var settings = new SessionOptions { IntraOpNumThreads = 1, InterOpNumThreads = 1, GraphOptimizationLevel = GraphOptimizationLevel.ORT_ENABLE_ALL };
        settings.AddSessionConfigEntry("session.intra_op.allow_spinning", "0");
        return new InferenceSession(Path.Combine(folder.Path, folder.Manifest.Onnx.File), settings);
    }
}
