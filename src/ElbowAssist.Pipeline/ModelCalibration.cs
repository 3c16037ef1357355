using System.Collections.ObjectModel;
using System.Text.Json;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Pipeline;

/// <summary>
/// The calibration block of a manifest: <c>{"split": "…", "factors": {"measurement": factor}}</c>, the factors by which
/// redraw intervals are stretched so that they hold on simulated calibration films.
/// </summary>
public static class ModelCalibration
{
    /// <summary>Factor by measurement name; empty if the model is not calibrated.</summary>
    public static IReadOnlyDictionary<string, double> Factors(ModelManifest manifest)
    {
        ArgumentNullException.ThrowIfNull(manifest);
        return manifest.Calibration is { ValueKind: JsonValueKind.Object } calibration &&
            calibration.TryGetProperty("factors", out var factors) && factors.ValueKind == JsonValueKind.Object
            ? factors.EnumerateObject()
                .Where(f => f.Value.ValueKind == JsonValueKind.Number && f.Value.GetDouble() > 0)
                .ToDictionary(f => f.Name, f => f.Value.GetDouble(), StringComparer.Ordinal)
            : ReadOnlyDictionary<string, double>.Empty;
    }
}
