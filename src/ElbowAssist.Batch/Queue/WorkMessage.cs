using System.Text.Json;
using System.Text.Json.Serialization;
using ElbowAssist.Batch.Films;

namespace ElbowAssist.Batch.Queue;

/// <summary>A film to be read, as it lies in the work queue.</summary>
/// <param name="Content">Hash of the film and what is said of it; names its bytes on the server.</param>
/// <param name="FileName">File name, for the reading.</param>
/// <param name="Options">Facts given as options, as a sidecar.</param>
/// <param name="Sidecar">The sidecar as it stands, or null.</param>
/// <param name="Film">The film's bytes where they are few, or null where they lie on the server or in place.</param>
/// <param name="Place">Path of the film below the workers' folder of films, or null where its bytes lie on the server.</param>
internal sealed record WorkMessage(string Content, string FileName, byte[] Options, byte[]? Sidecar, byte[]? Film, string? Place)
{
    /// <summary>Most bytes of a film that a message carries: with base64 well below a server's usual limit of 1 MiB.</summary>
    public const int MostCarried = 640 << 10;

    /// <summary>The film with these bytes.</summary>
    public FilmBytes FilmOf(byte[] bytes) => new(FileName, bytes, Sidecar is { } stated ? new ReadOnlyMemory<byte>(stated) : new ReadOnlyMemory<byte>?());

    public byte[] Write() => JsonSerializer.SerializeToUtf8Bytes(this, WorkMessageJson.Default.WorkMessage);

    /// <summary>A message; null for bytes that are none.</summary>
    public static WorkMessage? Parse(ReadOnlySpan<byte> utf8)
    {
        try
        {
            return JsonSerializer.Deserialize(utf8, WorkMessageJson.Default.WorkMessage) is { Content.Length: 64, FileName.Length: > 0, Options: not null } message
                ? message
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>Serialisation without reflection. Not on the fast path, which writes an array that is null as an empty one.</summary>
[JsonSerializable(typeof(WorkMessage))]
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
internal sealed partial class WorkMessageJson : JsonSerializerContext;
