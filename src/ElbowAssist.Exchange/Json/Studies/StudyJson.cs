using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Exchange.Json.Blocks;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Exchange.Json.Studies;

/// <summary>
/// A study as <c>elbowassist/study/1</c>. Reading gives back what went into the study, so that what follows from it is
/// worked out by the rules of the reading program and not taken from the file.
/// </summary>
public static class StudyJson
{
    /// <summary>The study as UTF-8 text without byte order mark, indented, ending with a line feed.</summary>
    /// <exception cref="InvalidOperationException">A reading breaks a rule of its format.</exception>
    public static byte[] Write(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (study.Films.Select(f => ReadingConsistency.FirstBreach(f.Reading)).FirstOrDefault(b => b is not null) is { } breach)
        {
            throw new InvalidOperationException(breach);
        }

        return JsonText.Write(json => Write(json, study));
    }

    /// <summary>
    /// Reads what went into a study. Every member but <c>schema</c> may be missing: a file with marks or a walk alone adds
    /// them to films read elsewhere, and <c>settledSides</c> says which side a film is of where its papers contradict each other.
    /// </summary>
    /// <param name="utf8">The text.</param>
    /// <param name="tool">The program that reads.</param>
    /// <exception cref="ExchangeFormatException">The text is no study of this version; the message is one sentence.</exception>
    public static StudyInput Read(ReadOnlyMemory<byte> utf8, ToolIdentity tool) => JsonText.Read(utf8, root =>
    {
        ReadingJson.ExpectSchema(root, Study.SchemaId);
        return new StudyInput
        {
            Tool = tool,
            StatedMaturity = root.Optional("statedMaturity")?.Word(StudyWords.Maturity) ?? Maturity.Unknown,
            InjuredSide = root.Optional("injuredSide")?.Word(Vocabularies.Side) ?? Side.Unknown,
            Films = root.Optional("films")?.Items(ReadFilm) ?? [],
            Marks = root.Optional("marks") is { } marks ? MarksBlock.Read(marks) : ReaderMarks.None,
            Walk = root.Optional("walk") is { } walk ? WalkBlock.Read(walk) : null,
            SettledSides = (root.Optional("settledSides")?.Members() ?? []).ToDictionary(
                m => m.Name, m => m.Value.Word(Vocabularies.Side), StringComparer.Ordinal),
        };
    });

    private static void Write(Utf8JsonWriter json, Study study)
    {
        json.WriteStartObject();
        json.WriteString("schema", Study.SchemaId);
        json.WriteStartObject("tool");
        json.WriteString("name", study.Tool.Name);
        json.WriteString("version", study.Tool.Version);
        json.WriteEndObject();
        json.WriteStartObject("patient");
        json.WriteNumberOrNull("ageMonths", study.Patient.AgeMonths);
        json.WriteString("sex", study.Patient.Sex is { } sex ? Vocabularies.Sex.WordOf(sex) : null);
        json.WriteEndObject();
        json.WriteString("statedMaturity", StudyWords.Maturity.WordOf(study.StatedMaturity));
        json.WriteString("injuredSide", Vocabularies.Side.WordOf(study.InjuredSide));
        json.WriteObjects("films", study.Films, static (j, film) =>
        {
            j.WriteString("id", film.Id);
            j.WriteObjects("sides", film.SideStatements, static (s, statement) =>
            {
                s.WriteString("source", statement.Source);
                s.WriteString("side", Vocabularies.Side.WordOf(statement.Side));
            });
            j.WritePropertyName("reading");
            ReadingJson.Write(j, film.Reading);
        });
        MarksBlock.Write(json, study.Marks);
        WalkBlock.Write(json, study.Walk);
        FindingBlocks.Write(json, study);
        json.WriteString("caution", study.CautionText);
        json.WriteEndObject();
    }

    private static StudyFilm ReadFilm(JsonCursor film)
    {
        var reading = ReadingJson.Read(film.Required("reading"));
        return ReadingConsistency.FirstBreach(reading) is { } breach
            ? throw film.Fail($"holds a reading that breaks its format: {breach.TrimEnd('.')}")
            : new StudyFilm(
                film.Required("id").Text(),
                reading,
                film.Optional("sides")?.Items(s => new SideStatement(s.Required("source").Text(), s.Required("side").Word(Vocabularies.Side))) ?? []);
    }
}
