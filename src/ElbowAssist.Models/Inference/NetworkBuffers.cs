using Microsoft.ML.OnnxRuntime;

namespace ElbowAssist.Models.Inference;

/// <summary>Input and output tensors of one run, bound to arrays that live as long as this object.</summary>
internal sealed class NetworkBuffers : IDisposable
{
    private readonly float[] input;
    private readonly Dictionary<string, float[]> outputs = new(StringComparer.Ordinal);
    private readonly List<OrtValue> values = [];

    public NetworkBuffers(string inputName, long[] inputShape, IReadOnlyDictionary<string, long[]> outputShapes)
    {
        input = Array(inputShape);
        InputNames = [inputName];
        InputValues = [Bind(input, inputShape)];
        OutputNames = [.. outputShapes.Keys];
        OutputValues = [.. outputShapes.Select(o => Bind(outputs[o.Key] = Array(o.Value), o.Value))];
    }

    public IReadOnlyList<string> InputNames { get; }

    public IReadOnlyList<OrtValue> InputValues { get; }

    public IReadOnlyList<string> OutputNames { get; }

    public IReadOnlyList<OrtValue> OutputValues { get; }

    /// <summary>One film, row by row.</summary>
    public Span<float> Input => input;

    /// <summary>Values of an output after a run.</summary>
    public float[] Output(string name) => outputs[name];

    public void Dispose() => values.ForEach(v => v.Dispose());

    private static float[] Array(long[] shape) => new float[shape.Aggregate(1L, (a, b) => a * b)];

    private OrtValue Bind(float[] array, long[] shape)
    {
        var value = OrtValue.CreateTensorValueFromMemory(array, shape);
        values.Add(value);
        return value;
    }
}
