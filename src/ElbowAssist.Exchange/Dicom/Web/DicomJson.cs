using System.Globalization;
using System.Text.Json;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Web;

/// <summary>The little that is needed of the DICOM JSON model (PS3.18 annex F).</summary>
internal static class DicomJson
{
    /// <summary>The objects of an answer; none for an empty answer.</summary>
    public static IReadOnlyList<JsonElement> Objects(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Length == 0)
        {
            return [];
        }

        try
        {
            ExpectReadable(utf8.Span);
            using var document = JsonDocument.Parse(utf8);
            return document.RootElement.ValueKind switch
            {
                JsonValueKind.Array => [.. document.RootElement.EnumerateArray().Where(e => e.ValueKind == JsonValueKind.Object).Select(e => e.Clone())],
                JsonValueKind.Object => [document.RootElement.Clone()],
                _ => [],
            };
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            throw new DicomWebException("The archive's answer is no DICOM JSON; check the address of its DICOMweb service.", e);
        }
    }

    /// <summary>Reads every name and text once: the parser leaves them unread until they are asked for, and then they may be none.</summary>
    private static void ExpectReadable(ReadOnlySpan<byte> utf8)
    {
        var reader = new Utf8JsonReader(utf8);
        while (reader.Read())
        {
            if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName)
            {
                _ = reader.GetString();
            }
        }
    }

    /// <summary>First value of an attribute as text, or null.</summary>
    public static string? Text(JsonElement dataset, Tag tag) =>
        Values(dataset, tag) is [var first, ..]
            ? first.ValueKind switch
            {
                JsonValueKind.String => first.GetString(),
                JsonValueKind.Number => first.GetRawText(),
                _ => null,
            }
            : null;

    /// <summary>Items of a sequence.</summary>
    public static IReadOnlyList<JsonElement> Items(JsonElement dataset, Tag tag) =>
        [.. Values(dataset, tag).Where(v => v.ValueKind == JsonValueKind.Object)];

    private static List<JsonElement> Values(JsonElement dataset, Tag tag) =>
        dataset.TryGetProperty(((uint)tag).ToString("X8", CultureInfo.InvariantCulture), out var attribute) &&
        attribute.ValueKind == JsonValueKind.Object && attribute.TryGetProperty("Value", out var values) &&
        values.ValueKind == JsonValueKind.Array
            ? [.. values.EnumerateArray()]
            : [];
}
