using System.Collections.Frozen;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ElbowAssist.Reading.Limits;

/// <summary>One limit with its origin.</summary>
/// <param name="Name">Stable name.</param>
/// <param name="Value">The limit.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Origin">Publication, or who chose it and why.</param>
public sealed record AdequacyLimit(string Name, double Value, string Unit, string Origin);

/// <summary>Every limit that decides what a film can carry; the data file <c>limits.json</c> is their one place.</summary>
public sealed partial class AdequacyLimits
{
    private readonly FrozenDictionary<string, AdequacyLimit> byName;

    private AdequacyLimits(IReadOnlyList<AdequacyLimit> all)
    {
        All = all;
        byName = all.ToFrozenDictionary(l => l.Name, StringComparer.Ordinal);
    }

    /// <summary>The limits shipped with the project.</summary>
    public static AdequacyLimits Default { get; } = Load();

    /// <summary>All limits in the order of the file.</summary>
    public IReadOnlyList<AdequacyLimit> All { get; }

    /// <summary>The value of a limit.</summary>
    /// <exception cref="KeyNotFoundException">There is no limit of that name.</exception>
    public double this[string name] => byName[name].Value;

    /// <summary>The limit of a name, or null if there is none.</summary>
    public AdequacyLimit? Find(string name) => byName.GetValueOrDefault(name);

    /// <summary>Limits from a file of the same form that stands in for the one shipped.</summary>
    /// <exception cref="FormatException">It is no such file, or it lacks a limit; the message is one sentence.</exception>
    public static AdequacyLimits Read(Stream json)
    {
        ArgumentNullException.ThrowIfNull(json);
        try
        {
            var read = new AdequacyLimits(JsonSerializer.Deserialize(json, LimitFileJson.Default.LimitFile)?.Limits ?? []);
            return Default.All.FirstOrDefault(l => !read.byName.ContainsKey(l.Name)) is { } missing
                ? throw new FormatException($"The file of limits lacks {missing.Name}.")
                : read;
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            throw new FormatException("The file of limits is no list of limits with name, value, unit and origin.", e);
        }
    }

    /// <summary>These limits with some of them chosen anew.</summary>
    /// <param name="chosen">New value and origin by name; every name must be known.</param>
    public AdequacyLimits With(IReadOnlyDictionary<string, (double Value, string Origin)> chosen)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        return new AdequacyLimits([.. All.Select(l => chosen.TryGetValue(l.Name, out var c) ? l with { Value = c.Value, Origin = c.Origin } : l)]);
    }

    /// <summary>The file of these limits, one limit to a line.</summary>
    public string ToJson()
    {
        var lines = All.Select(l => "    " + JsonSerializer.Serialize(l, LineJson.Default.AdequacyLimit));
        return $"{{\n  \"limits\": [\n{string.Join(",\n", lines)}\n  ]\n}}\n";
    }

    private static AdequacyLimits Load()
    {
        using var stream = typeof(AdequacyLimits).Assembly.GetManifestResourceStream("ElbowAssist.Reading.Limits.limits.json")!;
        return new AdequacyLimits(JsonSerializer.Deserialize(stream, LimitFileJson.Default.LimitFile)!.Limits);
    }

    private sealed record LimitFile(IReadOnlyList<AdequacyLimit> Limits);

    [JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
    [JsonSerializable(typeof(LimitFile))]
    private sealed partial class LimitFileJson : JsonSerializerContext;

    [JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
    [JsonSerializable(typeof(AdequacyLimit))]
    private sealed partial class LineJson : JsonSerializerContext;
}
