using System.Text.Json;
using System.Text.Json.Serialization;

namespace ElbowAssist.Models.Folders;

/// <summary>The manifest <c>model.json</c> of a model folder, schema <c>elbowassist/model/1</c>.</summary>
public sealed record ModelManifest
{
    /// <summary>Schema identifier.</summary>
    public const string SchemaId = "elbowassist/model/1";

    /// <summary>Schema identifier of this manifest.</summary>
    public required string Schema { get; init; }

    /// <summary>Name of the model.</summary>
    public required string Name { get; init; }

    /// <summary>Version of the model.</summary>
    public required string Version { get; init; }

    /// <summary><c>landmarks</c> or <c>view</c>.</summary>
    public required string Task { get; init; }

    /// <summary>Views it serves: <c>lateral</c>, <c>ap</c>, <c>oblique</c>.</summary>
    public required IReadOnlyList<string> Views { get; init; }

    /// <summary>The network.</summary>
    public required OnnxFile Onnx { get; init; }

    /// <summary>What the network takes.</summary>
    public required ModelInput Input { get; init; }

    /// <summary>What the network gives.</summary>
    public required ModelOutputs Outputs { get; init; }

    /// <summary>Landmarks in channel order; empty for a view model.</summary>
    public IReadOnlyList<ModelLandmark> Landmarks { get; init; } = [];

    /// <summary>Landmarks of the view that this model does not propose; every other one must be in <see cref="Landmarks"/>.</summary>
    public IReadOnlyList<string> Absent { get; init; } = [];

    /// <summary>Calibration tables and the split they came from, or null.</summary>
    public JsonElement? Calibration { get; init; }

    /// <summary>Evaluation figures.</summary>
    public JsonElement? Evaluation { get; init; }

    /// <summary>What it was trained on.</summary>
    public required ModelTraining Training { get; init; }

    /// <summary>Known limits, a sentence each.</summary>
    public required IReadOnlyList<string> Limits { get; init; }

    /// <summary>Licence of the model.</summary>
    public required string Licence { get; init; }

    internal static JsonSerializerOptions JsonOptions { get; } = new(JsonSerializerDefaults.Web)
    {
        RespectNullableAnnotations = true,
        NumberHandling = JsonNumberHandling.Strict,
    };
}

/// <summary>The ONNX file beside the manifest.</summary>
/// <param name="File">File name in the folder.</param>
/// <param name="Sha256">SHA-256 of the file, lower-case hex.</param>
/// <param name="Opset">Operator set version.</param>
public sealed record OnnxFile(string File, string Sha256, int Opset);

/// <summary>Input of a network: one film, [1, channels, height, width].</summary>
/// <param name="Name">Name of the tensor.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="Channels">Channels; 1.</param>
/// <param name="Normalisation">How grey values become input values.</param>
public sealed record ModelInput(string Name, int Width, int Height, int Channels, Normalisation Normalisation);

/// <summary>A normalisation recipe.</summary>
/// <param name="Recipe">Name; <c>standardised-crop</c>.</param>
/// <param name="Version">Version; 1.</param>
public sealed record Normalisation(string Recipe, int Version);

/// <summary>Outputs of a network by what they mean; null where the network does not give them.</summary>
public sealed record ModelOutputs
{
    /// <summary>Heatmap logits [1, K, height / stride, width / stride].</summary>
    public MapOutput? Heatmaps { get; init; }

    /// <summary>Points [1, K, 2] in input pixels, instead of heatmaps.</summary>
    public NamedOutput? Points { get; init; }

    /// <summary>Covariances [1, K, 3] as xx, xy, yy in squared input pixels.</summary>
    public NamedOutput? Covariance { get; init; }

    /// <summary>Visibility logits [1, K].</summary>
    public NamedOutput? Visibility { get; init; }

    /// <summary>View logits [1, classes].</summary>
    public ClassOutput? View { get; init; }

    /// <summary>Mean and standard deviation of the view error in degrees, [1, 2].</summary>
    public NamedOutput? ViewError { get; init; }

    /// <summary>Locator heatmap logits [1, 4, height / stride, width / stride].</summary>
    public LocatorOutput? Locator { get; init; }

    /// <summary>Pooled features [1, F].</summary>
    public NamedOutput? Features { get; init; }
}

/// <summary>An output tensor.</summary>
public sealed record NamedOutput(string Name);

/// <summary>Heatmaps: a cell covers stride × stride input pixels.</summary>
public sealed record MapOutput(string Name, int Stride);

/// <summary>Class logits and the class names in order.</summary>
public sealed record ClassOutput(string Name, IReadOnlyList<string> Classes);

/// <summary>Locator heatmaps and the point names in order.</summary>
public sealed record LocatorOutput(string Name, int Stride, IReadOnlyList<string> Points);

/// <summary>A landmark channel.</summary>
/// <param name="Name">Landmark name.</param>
/// <param name="Mirror">Channel that shows this landmark when the input is mirrored; the same name for anatomical names.</param>
public sealed record ModelLandmark(string Name, string Mirror);

/// <summary>Training statement.</summary>
/// <param name="Data">What it was trained on.</param>
/// <param name="Licence">Licence of the data.</param>
public sealed record ModelTraining(string Data, string Licence);
