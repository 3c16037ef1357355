using System.Buffers;
using System.Text.Json;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;

namespace ElbowAssist.Batch.Results;

/// <summary>How the reading of a film ended.</summary>
public enum FilmEnd
{
    /// <summary>It has a reading.</summary>
    Read,

    /// <summary>It has a reading that says why it was refused.</summary>
    Refused,

    /// <summary>It cannot be decoded, or what is said of it cannot be used.</summary>
    Unreadable,
}

/// <summary>
/// The result of a film as bytes that depend on film and <see cref="Recipe"/> alone: one JSON object without white space,
/// <c>outcome</c> and then <c>reading</c> (<c>elbowassist/reading/1</c> with an empty <c>timing</c>) or <c>failure</c>.
/// </summary>
/// <param name="End">How it ended.</param>
/// <param name="Json">UTF-8.</param>
public sealed record FilmResult(FilmEnd End, ReadOnlyMemory<byte> Json)
{
    /// <summary>The result of a film that was read.</summary>
    public static FilmResult Of(FilmReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var timeless = reading with { Timing = new Dictionary<string, double>(StringComparer.Ordinal) };
        using var document = JsonDocument.Parse(ReadingJson.Write(timeless));
        return Write(reading.Adequacy.Refused ? FilmEnd.Refused : FilmEnd.Read, json =>
        {
            json.WritePropertyName("reading");
            document.RootElement.WriteTo(json);
        });
    }

    /// <summary>The result of a film that cannot be read.</summary>
    /// <param name="sentence">Why; one sentence.</param>
    public static FilmResult Unreadable(string sentence) => Write(FilmEnd.Unreadable, json =>
    {
        json.WriteStartObject("failure");
        json.WriteString("text", sentence);
        json.WriteString("caution", Caution.Text);
        json.WriteEndObject();
    });

    /// <summary>A stored result; null for bytes that are none.</summary>
    public static FilmResult? Parse(ReadOnlyMemory<byte> json)
    {
        try
        {
            var reader = new Utf8JsonReader(json.Span);
            return reader.Read() && reader.TokenType == JsonTokenType.StartObject &&
                reader.Read() && reader.ValueTextEquals("outcome"u8) &&
                reader.Read() && EndOf(reader.GetString()) is { } end
                    ? new FilmResult(end, json)
                    : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static FilmEnd? EndOf(string? word) => word switch
    {
        "read" => FilmEnd.Read,
        "refused" => FilmEnd.Refused,
        "unreadable" => FilmEnd.Unreadable,
        _ => null,
    };

    private static string Word(FilmEnd end) => end switch
    {
        FilmEnd.Read => "read",
        FilmEnd.Refused => "refused",
        _ => "unreadable",
    };

    private static FilmResult Write(FilmEnd end, Action<Utf8JsonWriter> body)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            json.WriteString("outcome", Word(end));
            body(json);
            json.WriteEndObject();
        }

        return new FilmResult(end, bytes.WrittenMemory);
    }
}
