using System.Text;
using System.Text.Json;
using ElbowAssist.Pipeline.Calibration;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>Writes a calibration into a manifest, whose other members stay as they are.</summary>
public static class CalibratedManifest
{
    /// <summary>The manifest with its calibration replaced; rows of numbers stand on one line.</summary>
    /// <param name="manifest">The manifest <c>model.json</c> so far.</param>
    /// <param name="calibration">The calibration.</param>
    /// <exception cref="JsonException">The manifest is no JSON object.</exception>
    public static byte[] Write(ReadOnlyMemory<byte> manifest, ModelCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        using var parsed = JsonDocument.Parse(manifest);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, IndentSize = 1, NewLine = "\n" }))
        {
            json.WriteStartObject();
            foreach (var member in parsed.RootElement.EnumerateObject().Where(m => m.Name != "calibration"))
            {
                json.WritePropertyName(member.Name);
                member.Value.WriteTo(json);
            }

            json.WritePropertyName("calibration");
            WriteCompact(json, calibration.ToJson());
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void WriteCompact(Utf8JsonWriter json, JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                json.WriteStartObject();
                foreach (var member in element.EnumerateObject())
                {
                    json.WritePropertyName(member.Name);
                    WriteCompact(json, member.Value);
                }

                json.WriteEndObject();
                break;
            case JsonValueKind.Array when element.EnumerateArray().All(e => e.ValueKind is JsonValueKind.Number or JsonValueKind.String):
                json.WriteRawValue(Encoding.UTF8.GetBytes(element.GetRawText()));
                break;
            case JsonValueKind.Array:
                json.WriteStartArray();
                foreach (var item in element.EnumerateArray())
                {
                    WriteCompact(json, item);
                }

                json.WriteEndArray();
                break;
            default:
                element.WriteTo(json);
                break;
        }
    }
}
