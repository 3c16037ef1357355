using System.Collections.Frozen;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace ElbowAssist.Reading.Reasons;

/// <summary>What a reason applies to.</summary>
public enum ReasonScope
{
    /// <summary>The whole film is refused.</summary>
    Film,

    /// <summary>Single measurements are withheld.</summary>
    Measurement,

    /// <summary>A value is given, and may belong on either side of a limit.</summary>
    EitherSide,
}

/// <summary>The sentence and scope of every reason code; the data file <c>reasons.json</c> is their one place.</summary>
public sealed partial class ReasonTable
{
    private readonly FrozenDictionary<string, Entry> entries;

    private ReasonTable(IReadOnlyList<Entry> entries) =>
        this.entries = entries.ToFrozenDictionary(e => e.Code, StringComparer.Ordinal);

    /// <summary>The reasons shipped with the project.</summary>
    public static ReasonTable Default { get; } = Load();

    /// <summary>All codes.</summary>
    public IEnumerable<string> Codes => entries.Keys;

    /// <summary>Whether a code is known.</summary>
    public bool Has(string code) => entries.ContainsKey(code);

    /// <summary>The reason of a code with its sentence.</summary>
    /// <exception cref="KeyNotFoundException">There is no reason of that code.</exception>
    public Reason this[string code] => entries.TryGetValue(code, out var entry)
        ? new Reason(code, entry.Text)
        : throw new KeyNotFoundException($"There is no reason '{code}' in reasons.json.");

    /// <summary>What a code applies to.</summary>
    /// <exception cref="KeyNotFoundException">There is no reason of that code.</exception>
    public ReasonScope ScopeOf(string code) => entries[code].Scope switch
    {
        "film" => ReasonScope.Film,
        "either-side" => ReasonScope.EitherSide,
        _ => ReasonScope.Measurement,
    };

    private static ReasonTable Load()
    {
        using var stream = typeof(ReasonTable).Assembly.GetManifestResourceStream("ElbowAssist.Reading.Reasons.reasons.json")!;
        return new ReasonTable(JsonSerializer.Deserialize(stream, ReasonFileJson.Default.ReasonFile)!.Reasons);
    }

    private sealed record Entry(string Code, string Scope, string Text);

    private sealed record ReasonFile(IReadOnlyList<Entry> Reasons);

    [JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
    [JsonSerializable(typeof(ReasonFile))]
    private sealed partial class ReasonFileJson : JsonSerializerContext;
}
