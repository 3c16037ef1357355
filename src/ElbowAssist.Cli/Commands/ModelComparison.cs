using System.Globalization;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Cli.Commands;

/// <summary>Models side by side by what their manifests say; how well they do is a matter of <c>bench</c>.</summary>
internal static class ModelComparison
{
    private static readonly (string Name, Func<ModelFolder, string> Of)[] Facts =
    [
        ("version", f => f.Manifest.Version),
        ("task", f => f.Manifest.Task),
        ("views", f => string.Join(" ", f.Manifest.Views)),
        ("input", f => string.Create(CultureInfo.InvariantCulture, $"{f.Manifest.Input.Width} x {f.Manifest.Input.Height}, {f.Manifest.Input.Normalisation.Recipe} {f.Manifest.Input.Normalisation.Version}")),
        ("landmarks", f => string.Create(CultureInfo.InvariantCulture, $"{f.Manifest.Landmarks.Count}, absent {f.Manifest.Absent.Count}")),
        ("lays", f => f.Manifest.Outputs switch
        {
            { Points: not null } => "points",
            { Heatmaps: { } maps } => string.Create(CultureInfo.InvariantCulture, $"heatmaps, stride {maps.Stride}"),
            _ => "view and locator",
        }),
        ("says also", f => string.Join(" ", Also(f.Manifest.Outputs))),
        ("calibrated", f => f.Manifest.Calibration is null ? "no" : "yes"),
        ("network", f => string.Create(CultureInfo.InvariantCulture, $"{new FileInfo(Path.Combine(f.Path, f.Manifest.Onnx.File)).Length / 1024} KiB, opset {f.Manifest.Onnx.Opset}")),
        ("sha256", f => f.Manifest.Onnx.Sha256[..16]),
        ("trained on", f => f.Manifest.Training.Data),
        ("data licence", f => f.Manifest.Training.Licence),
        ("licence", f => f.Manifest.Licence),
    ];

    /// <summary>One row per fact, one column per model; the last column says where they differ.</summary>
    public static Table Of(IReadOnlyList<ModelFolder> models) => new(
        "models",
        "models by their manifests; elbowassist bench DATASET --models A B says how well they do",
        ["fact", .. models.Select(m => m.Manifest.Name), "differs"],
        [.. Facts.Select(fact => (fact.Name, Values: models.Select(m => Shortened(fact.Of(m))).ToList()))
            .Select(row => (IReadOnlyList<object>)[row.Name, .. row.Values, row.Values.Distinct(StringComparer.Ordinal).Count() > 1])]);

    private static IEnumerable<string> Also(ModelOutputs outputs)
    {
        if (outputs.Covariance is not null)
        {
            yield return "covariance";
        }

        if (outputs.Visibility is not null)
        {
            yield return "visibility";
        }

        if (outputs.ViewError is not null)
        {
            yield return "view error";
        }

        if (outputs.Features is not null)
        {
            yield return "features";
        }
    }

    private static string Shortened(string text) => text.Length <= 60 ? text : text[..57] + "...";
}
