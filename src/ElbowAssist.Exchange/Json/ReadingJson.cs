using System.Text.Json;
using ElbowAssist.Exchange.Json.Blocks;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json;

/// <summary>
/// <see cref="FilmReading"/> as <c>elbowassist/reading/1</c>. The order of members is fixed, numbers are written in
/// full and without culture; two equal readings give equal bytes up to <c>timing</c>, which comes last.
/// </summary>
public static class ReadingJson
{
    /// <summary>The reading as UTF-8 text without byte order mark, indented, ending with a line feed.</summary>
    /// <exception cref="InvalidOperationException">The reading breaks a rule of its format, e.g. a withheld measurement with a value.</exception>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static byte[] Write(FilmReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (ReadingConsistency.FirstBreach(reading) is { } breach)
        {
            throw new InvalidOperationException(breach);
        }

        return JsonText.Write(json => Write(json, reading));
    }

    /// <summary>Reads a reading.</summary>
    /// <exception cref="ExchangeFormatException">The text is no reading of this version; the message is one sentence.</exception>
    public static FilmReading Read(ReadOnlyMemory<byte> utf8)
    {
        var reading = JsonText.Read(utf8, Read);
        return ReadingConsistency.FirstBreach(reading) is { } breach ? throw new ExchangeFormatException(breach) : reading;
    }

    internal static void Write(Utf8JsonWriter json, FilmReading reading)
    {
        json.WriteStartObject();
        json.WriteString("schema", FilmReading.SchemaId);
        json.WriteStartObject("tool");
        json.WriteString("name", reading.Tool.Name);
        json.WriteString("version", reading.Tool.Version);
        json.WriteEndObject();
        json.WriteObjects("models", reading.Models, static (j, model) =>
        {
            j.WriteString("name", model.Name);
            j.WriteString("version", model.Version);
            j.WriteString("sha256", model.Sha256);
        });
        FilmBlocks.WriteImage(json, reading.Image);
        FilmBlocks.WriteView(json, reading.View);
        FilmBlocks.WritePatient(json, reading.Side, reading.Patient, reading.Context);
        AdequacyBlock.Write(json, reading.Adequacy);
        LandmarkBlock.Write(json, reading.Landmarks);
        MeasurementBlocks.WriteLines(json, reading.Lines);
        MeasurementBlocks.WriteCircles(json, reading.Circles);
        MeasurementBlocks.WriteMeasurements(json, reading.Measurements);
        json.WriteObjects("evidence", reading.Evidence, static (j, evidence) =>
        {
            j.WriteString("name", evidence.Name);
            j.WriteString("state", Vocabularies.Evidence.WordOf(evidence.State));
            j.WriteString("figure", evidence.Figure);
        });
        json.WriteObjects("prompts", reading.Prompts, static (j, prompt) =>
        {
            j.WriteString("code", prompt.Code);
            j.WriteString("text", prompt.Text);
            j.WriteString("source", prompt.Source);
        });
        json.WriteObjects("reasons", reading.Reasons, static (j, reason) =>
        {
            j.WriteString("code", reason.Code);
            j.WriteString("text", reason.Text);
        });
        json.WriteString("caution", reading.CautionText);
        json.WriteFigures("timing", reading.Timing);
        json.WriteEndObject();
    }

    internal static FilmReading Read(JsonCursor root)
    {
        ExpectSchema(root, FilmReading.SchemaId);
        return new FilmReading
        {
            Tool = new ToolIdentity(root.Required("tool").Required("name").Text(), root.Required("tool").Required("version").Text()),
            Models = root.Required("models").Items(m => new ModelIdentity(
                m.Required("name").Text(), m.Required("version").Text(), m.Required("sha256").Text())),
            Image = FilmBlocks.ReadImage(root.Required("image")),
            View = FilmBlocks.ReadView(root.Required("view")),
            Side = root.Required("side").Word(Vocabularies.Side),
            Patient = FilmBlocks.ReadPatient(root.Required("patient")),
            Context = root.Required("context").Word(Vocabularies.Context),
            Adequacy = AdequacyBlock.Read(root.Required("adequacy")),
            Landmarks = LandmarkBlock.Read(root.Required("landmarks")),
            Lines = MeasurementBlocks.ReadLines(root.Required("lines")),
            Circles = MeasurementBlocks.ReadCircles(root.Required("circles")),
            Measurements = MeasurementBlocks.ReadMeasurements(root.Required("measurements")),
            Evidence = root.Required("evidence").Items(e => new Evidence(
                e.Required("name").Text(), e.Required("state").Word(Vocabularies.Evidence), e.Nullable("figure")?.Text())),
            Prompts = root.Required("prompts").Items(p => new Prompt(
                p.Required("code").Text(), p.Required("text").Text(), p.Required("source").Text())),
            Reasons = root.Required("reasons").Items(r => new Reason(r.Required("code").Text(), r.Required("text").Text())),
            CautionText = root.Required("caution").Text(),
            Timing = root.Required("timing").Figures(),
        };
    }

    internal static void ExpectSchema(JsonCursor root, string schema)
    {
        var found = root.Required("schema");
        if (found.Text() != schema)
        {
            throw found.Fail($"must be \"{schema}\"");
        }
    }
}
