using System.Text.Json;
using ElbowAssist.Exchange.Json.Blocks;

namespace ElbowAssist.Exchange.Json.Facts;

/// <summary>The file <c>&lt;film file&gt;.info.json</c> beside a film, which says what the image cannot.</summary>
public static class SidecarJson
{
    /// <summary>What is added to the film's file name.</summary>
    public const string Suffix = ".info.json";

    private static readonly string[] Known =
        ["rowSpacingMm", "columnSpacingMm", "ageMonths", "sex", "side", "context", "view"];

    /// <summary>Reads a sidecar. Every member may be missing or null; one that is not known is an error.</summary>
    /// <exception cref="ExchangeFormatException">The text is no sidecar; the message is one sentence.</exception>
    public static FilmFacts Read(ReadOnlyMemory<byte> utf8) => JsonText.Read(utf8, Read);

    /// <summary>The sidecar as UTF-8 text; what is null is left out.</summary>
    public static byte[] Write(FilmFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return JsonText.Write(json =>
        {
            json.WriteStartObject();
            Number(json, "rowSpacingMm", facts.RowSpacingMm);
            Number(json, "columnSpacingMm", facts.ColumnSpacingMm);
            Number(json, "ageMonths", facts.AgeMonths);
            Word(json, "sex", facts.Sex, Vocabularies.Sex);
            Word(json, "side", facts.Side, Vocabularies.Side);
            Word(json, "context", facts.Context, Vocabularies.Context);
            Word(json, "view", facts.View, Vocabularies.View);
            json.WriteEndObject();
        });
    }

    private static FilmFacts Read(JsonCursor root)
    {
        foreach (var (name, _) in root.Members())
        {
            if (!Known.Contains(name, StringComparer.Ordinal))
            {
                throw root.Fail($"holds \"{name}\", which is none of {string.Join(", ", Known)}");
            }
        }

        var row = FilmBlocks.Spacing(root.Optional("rowSpacingMm"));
        var column = FilmBlocks.Spacing(root.Optional("columnSpacingMm"));
        if (row is null != column is null)
        {
            throw root.Fail("must give both rowSpacingMm and columnSpacingMm or neither");
        }

        return new FilmFacts("sidecar")
        {
            RowSpacingMm = row,
            ColumnSpacingMm = column,
            AgeMonths = FilmBlocks.AgeMonths(root.Optional("ageMonths")),
            Sex = root.Optional("sex")?.Word(Vocabularies.Sex),
            Side = root.Optional("side")?.Word(Vocabularies.Side),
            Context = root.Optional("context")?.Word(Vocabularies.Context),
            View = root.Optional("view")?.Word(Vocabularies.View),
        };
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
    }

    private static void Word<T>(Utf8JsonWriter json, string name, T? value, Vocabulary<T> vocabulary)
        where T : struct, Enum
    {
        if (value is { } known)
        {
            json.WriteString(name, vocabulary.WordOf(known));
        }
    }
}
