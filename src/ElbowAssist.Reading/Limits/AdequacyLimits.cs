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

    private static AdequacyLimits Load()
    {
        using var stream = typeof(AdequacyLimits).Assembly.GetManifestResourceStream("ElbowAssist.Reading.Limits.limits.json")!;
        return new AdequacyLimits(JsonSerializer.Deserialize(stream, LimitFileJson.Default.LimitFile)!.Limits);
    }

    private sealed record LimitFile(IReadOnlyList<AdequacyLimit> Limits);

    [JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
    [JsonSerializable(typeof(LimitFile))]
    private sealed partial class LimitFileJson : JsonSerializerContext;
}
