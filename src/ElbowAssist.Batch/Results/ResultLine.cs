using System.Buffers;
using System.Text.Json;

namespace ElbowAssist.Batch.Results;

/// <summary>
/// A line of a results file, <c>elbowassist/result/1</c>: <c>schema</c>, <c>content</c>, <c>models</c>, <c>pipeline</c>,
/// <c>film</c>, and then the members of the <see cref="FilmResult"/>.
/// </summary>
/// <param name="Content">Hash of the film and what is said of it.</param>
/// <param name="Recipe">What made the result.</param>
/// <param name="Film">Name of the film in its source.</param>
/// <param name="End">How it ended.</param>
public sealed record ResultLine(string Content, Recipe Recipe, string Film, FilmEnd End)
{
    /// <summary>Schema identifier.</summary>
    public const string SchemaId = "elbowassist/result/1";

    /// <summary>The line with its line feed.</summary>
    public static byte[] Write(string content, Recipe recipe, string film, FilmResult result)
    {
        ArgumentNullException.ThrowIfNull(recipe);
        ArgumentNullException.ThrowIfNull(result);
        var bytes = new ArrayBufferWriter<byte>(result.Json.Length + 512);
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            json.WriteString("schema", SchemaId);
            json.WriteString("content", content);
            json.WriteString("models", recipe.Models);
            json.WriteString("pipeline", recipe.Pipeline);
            json.WriteString("film", film);
            json.WriteEndObject();
        }

        // The head loses its closing brace and the result its opening one: the members of both in one object.
        return [.. bytes.WrittenSpan[..^1], (byte)',', .. result.Json.Span[1..], (byte)'\n'];
    }

    /// <summary>What a line says of its film; null for bytes that are no whole line of this format.</summary>
    public static ResultLine? Parse(ReadOnlyMemory<byte> line)
    {
        try
        {
            using var document = JsonDocument.Parse(line);
            var root = document.RootElement;
            string? Text(string name) => root.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
            return root.ValueKind == JsonValueKind.Object && Text("schema") == SchemaId &&
                Text("content") is { } content && Text("models") is { } models && Text("pipeline") is { } pipeline && Text("film") is { } film
                    ? new ResultLine(content, new Recipe(models, pipeline), film, Text("outcome") switch
                    {
                        "read" => FilmEnd.Read,
                        "refused" => FilmEnd.Refused,
                        _ => FilmEnd.Unreadable,
                    })
                    : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }
}
