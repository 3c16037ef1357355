using System.Buffers;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Json;

/// <summary>Reading and writing of JSON text under the project's rules: strict in, stable and legible out.</summary>
internal static class JsonText
{
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false, MaxDepth = InputLimits.JsonDepth };

    private static readonly JsonWriterOptions Legible = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static T Read<T>(ReadOnlyMemory<byte> utf8, Func<JsonCursor, T> read)
    {
        if (utf8.Length > InputLimits.JsonBytes)
        {
            throw new ExchangeFormatException("The file is larger than 64 MB.");
        }

        try
        {
            using var document = JsonDocument.Parse(WithoutByteOrderMark(utf8), Strict);
            return read(new JsonCursor(document.RootElement, ""));
        }
        catch (JsonException e)
        {
            var line = (e.LineNumber ?? 0) + 1;
            throw new ExchangeFormatException(string.Create(CultureInfo.InvariantCulture, $"The text is not valid JSON (line {line})."), e);
        }
        catch (InvalidOperationException e) when (e.Source?.StartsWith("System.Text.Json", StringComparison.Ordinal) == true)
        {
            // The parser leaves the inside of strings unread until it is asked for.
            throw new ExchangeFormatException("The text holds characters that are none, such as half of a pair or bytes that are not UTF-8.", e);
        }
    }

    public static byte[] Write(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>(64 * 1024);
        using (var writer = new Utf8JsonWriter(buffer, Legible))
        {
            write(writer);
        }

        buffer.Write("\n"u8);
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Writes numbers as a list on one line.</summary>
    public static void WriteNumbers(this Utf8JsonWriter writer, string name, params ReadOnlySpan<double> numbers)
    {
        writer.WritePropertyName(name);
        writer.WriteRawValue(List(numbers));
    }

    public static void WritePoint(this Utf8JsonWriter writer, string name, Point point) =>
        writer.WriteNumbers(name, point.X, point.Y);

    public static void WriteVector(this Utf8JsonWriter writer, string name, Vector vector) =>
        writer.WriteNumbers(name, vector.X, vector.Y);

    /// <summary>Writes a symmetric matrix as two rows on one line.</summary>
    public static void WriteSymmetric(this Utf8JsonWriter writer, string name, double xx, double xy, double yy)
    {
        writer.WritePropertyName(name);
        writer.WriteRawValue($"[{List(xx, xy)}, {List(xy, yy)}]");
    }

    public static void WriteNumberOrNull(this Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, number);
        }
        else
        {
            writer.WriteNull(name);
        }
    }

    public static void WriteWords(this Utf8JsonWriter writer, string name, IEnumerable<string> words)
    {
        writer.WriteStartArray(name);
        foreach (var word in words)
        {
            writer.WriteStringValue(word);
        }

        writer.WriteEndArray();
    }

    /// <summary>Writes a list of objects.</summary>
    public static void WriteObjects<T>(this Utf8JsonWriter writer, string name, IEnumerable<T> items, Action<Utf8JsonWriter, T> writeMembers)
    {
        writer.WriteStartArray(name);
        foreach (var item in items)
        {
            writer.WriteStartObject();
            writeMembers(writer, item);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    /// <summary>Writes an object of numbers, in ordinal order of the names.</summary>
    public static void WriteFigures(this Utf8JsonWriter writer, string name, IReadOnlyDictionary<string, double> figures)
    {
        writer.WriteStartObject(name);
        foreach (var (key, value) in figures.OrderBy(f => f.Key, StringComparer.Ordinal))
        {
            writer.WriteNumber(key, value);
        }

        writer.WriteEndObject();
    }

    public static IReadOnlyDictionary<string, double> Figures(this JsonCursor cursor) =>
        cursor.Members().ToDictionary(m => m.Name, m => m.Value.Number(), StringComparer.Ordinal);

    private static string List(params ReadOnlySpan<double> numbers)
    {
        var words = new string[numbers.Length];
        for (var i = 0; i < numbers.Length; i++)
        {
            words[i] = double.IsFinite(numbers[i])
                ? numbers[i].ToString("R", CultureInfo.InvariantCulture)
                : throw new ArgumentException("A reading holds finite numbers only.", nameof(numbers));
        }

        return $"[{string.Join(", ", words)}]";
    }

    private static ReadOnlyMemory<byte> WithoutByteOrderMark(ReadOnlyMemory<byte> utf8) =>
        utf8.Span.StartsWith("\uFEFF"u8) ? utf8[3..] : utf8;
}
