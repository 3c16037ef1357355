using System.Text.Json;
using System.Text.Json.Serialization;
using ElbowAssist.Models.Folders;

namespace ElbowAssist.Pipeline.Calibration;

/// <summary>
/// The calibration block of a landmark model's manifest: what was fitted on simulated calibration films so that spread,
/// intervals and zone probabilities hold on such films. It promises nothing about films of patients.
/// </summary>
public sealed partial record ModelCalibration
{
    /// <summary>An uncalibrated model: spread as the network states it.</summary>
    public static ModelCalibration None { get; } = new() { Split = new CalibrationSplit("none", null, null, 0, 0) };

    /// <summary>The films it was fitted on.</summary>
    public required CalibrationSplit Split { get; init; }

    /// <summary>Factors of redraw intervals.</summary>
    public IReadOnlyList<IntervalFactor> Intervals { get; init; } = [];

    /// <summary>Corrections of zone probabilities.</summary>
    public IReadOnlyList<ZoneTable> Zones { get; init; } = [];

    /// <summary>How landmarks err together, or null.</summary>
    public SharedSpread? Spread { get; init; }

    /// <summary>What the network's features look like on films it knows, or null.</summary>
    public FeatureModel? Features { get; init; }

    /// <summary>The shapes that groups of landmarks take.</summary>
    public IReadOnlyList<ShapeModel> Shapes { get; init; } = [];

    /// <summary>The calibration in a manifest; <see cref="None"/> if it has none.</summary>
    /// <exception cref="FormatException">The block is there but is not of this form; the message is one sentence.</exception>
    public static ModelCalibration Of(ModelManifest manifest)
    {
        ArgumentNullException.ThrowIfNull(manifest);
        if (manifest.Calibration is not { ValueKind: JsonValueKind.Object } block)
        {
            return None;
        }

        try
        {
            return block.Deserialize(CalibrationJson.Default.ModelCalibration) ?? None;
        }
        catch (JsonException e)
        {
            throw new FormatException($"The calibration of the model {manifest.Name} is wrong at {e.Path ?? "its beginning"}; calibrate it anew.", e);
        }
    }

    /// <summary>The block as JSON.</summary>
    public JsonElement ToJson() => JsonSerializer.SerializeToElement(this, CalibrationJson.Default.ModelCalibration);

    /// <summary>
    /// Factor by measurement name for a patient of this age: the narrowest band that holds it; where the age is unknown,
    /// the largest factor of any band.
    /// </summary>
    public IReadOnlyDictionary<string, double> FactorsFor(int? ageMonths) => Intervals
        .GroupBy(i => i.Measurement, StringComparer.Ordinal)
        .ToDictionary(
            g => g.Key,
            g => ageMonths is { } age
                ? g.Where(i => i.Holds(age)).OrderBy(i => i.Width).Select(i => i.Factor).FirstOrDefault(1)
                : g.Max(i => i.Factor),
            StringComparer.Ordinal);

    [JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true)]
    [JsonSerializable(typeof(ModelCalibration))]
    private sealed partial class CalibrationJson : JsonSerializerContext;
}

/// <summary>The films a calibration was fitted on.</summary>
/// <param name="Origin">What they are, in words.</param>
/// <param name="FirstSeed">Smallest seed of simulated films, or null.</param>
/// <param name="LastSeed">Largest seed, or null.</param>
/// <param name="Films">Films of the model's view.</param>
/// <param name="Accepted">Films among them that were not refused.</param>
public sealed record CalibrationSplit(string Origin, ulong? FirstSeed, ulong? LastSeed, int Films, int Accepted);

/// <summary>The factor that stretches the redraw intervals of a measurement about its value.</summary>
/// <param name="Measurement">Measurement name.</param>
/// <param name="FromMonths">Youngest age, included.</param>
/// <param name="ToMonths">Oldest age, excluded; null for no end.</param>
/// <param name="Factor">Conformal quantile of |error| over the half-width on its side.</param>
/// <param name="Films">Films it rests on.</param>
public sealed record IntervalFactor(string Measurement, int FromMonths, int? ToMonths, double Factor, int Films)
{
    internal int Width => (ToMonths ?? 1500) - FromMonths;

    internal bool Holds(int ageMonths) => ageMonths >= FromMonths && !(ageMonths >= ToMonths);
}

/// <summary>Correction of the zone probabilities of a measurement.</summary>
/// <param name="Measurement">Measurement name.</param>
/// <param name="Temperature">Temperature.</param>
/// <param name="Mix">Weight of <paramref name="Prior"/>.</param>
/// <param name="Prior">Share of each zone on the calibration films.</param>
/// <param name="Films">Films it rests on.</param>
public sealed record ZoneTable(string Measurement, double Temperature, double Mix, IReadOnlyDictionary<string, double> Prior, int Films);
