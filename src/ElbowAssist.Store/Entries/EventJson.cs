using System.Text.Json;
using System.Text.Json.Serialization;
using ElbowAssist.Geometry;

namespace ElbowAssist.Store.Entries;

/// <summary>Events as text in the store. Words, not numbers, stand for what can be one of several.</summary>
internal static class EventJson
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower), new PointConverter() },
    };

    public static string Write(StudyEvent happened) => JsonSerializer.Serialize(happened, Options);

    /// <exception cref="StoreException">The text is no event this version knows.</exception>
    public static StudyEvent Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<StudyEvent>(text, Options) ?? throw new StoreException("An entry of the store is empty.");
        }
        catch (Exception e) when (e is JsonException or NotSupportedException)
        {
            throw new StoreException("An entry of the store cannot be read; it may come from a later version.", e);
        }
    }

    private sealed class PointConverter : JsonConverter<Point>
    {
        public override Point Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            JsonSerializer.Deserialize<double[]>(ref reader, options) is [var x, var y] ? new Point(x, y) : throw new JsonException("A point has two numbers.");

        public override void Write(Utf8JsonWriter writer, Point value, JsonSerializerOptions options)
        {
            writer.WriteStartArray();
            writer.WriteNumberValue(value.X);
            writer.WriteNumberValue(value.Y);
            writer.WriteEndArray();
        }
    }
}
