using System.Text.Json;
using ElbowAssist.Exchange.Json.Blocks;

namespace ElbowAssist.Exchange.Json;

/// <summary><see cref="TruthFile"/> as <c>elbowassist/truth/1</c>, in the blocks of a reading.</summary>
public static class TruthJson
{
    /// <summary>The truth as UTF-8 text without byte order mark, indented, ending with a line feed.</summary>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static byte[] Write(TruthFile truth)
    {
        ArgumentNullException.ThrowIfNull(truth);
        return JsonText.Write(json => Write(json, truth));
    }

    /// <summary>Reads a truth file. Lines, circles, measurements, <c>simulated</c> and <c>notElbow</c> may be missing.</summary>
    /// <exception cref="ExchangeFormatException">The text is no truth of this version; the message is one sentence.</exception>
    public static TruthFile Read(ReadOnlyMemory<byte> utf8) => JsonText.Read(utf8, Read);

    private static void Write(Utf8JsonWriter json, TruthFile truth)
    {
        json.WriteStartObject();
        json.WriteString("schema", TruthFile.SchemaId);
        FilmBlocks.WriteImage(json, truth.Image);
        FilmBlocks.WriteView(json, truth.View);
        FilmBlocks.WritePatient(json, truth.Side, truth.Patient, truth.Context);
        LandmarkBlock.WriteTrue(json, truth.Landmarks);
        MeasurementBlocks.WriteLines(json, truth.Lines);
        MeasurementBlocks.WriteCircles(json, truth.Circles);
        MeasurementBlocks.WriteMeasurements(json, truth.Measurements);
        if (truth.Simulated is { } simulated)
        {
            WriteSimulated(json, simulated);
        }

        if (truth.NotElbow is { } other)
        {
            json.WriteStartObject("notElbow");
            json.WriteNumber("seed", other.Seed);
            json.WriteString("shows", other.Shows);
            json.WriteString("version", other.Version);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private static void WriteSimulated(Utf8JsonWriter json, SimulatedFacts simulated)
    {
        json.WriteStartObject("simulated");
        json.WriteNumber("seed", simulated.Seed);
        json.WriteNumber("ageMonths", simulated.AgeMonths);
        json.WriteString("sex", Vocabularies.Sex.WordOf(simulated.Sex));
        json.WriteString("side", Vocabularies.Side.WordOf(simulated.Side));
        json.WriteWords("injuries", simulated.Injuries);
        json.WriteNumber("viewErrorDegrees", simulated.ViewErrorDegrees);
        json.WriteFigures("exposure", simulated.Exposure);
        json.WriteFigures("neutral", simulated.Neutral);
        json.WriteEndObject();
    }

    private static TruthFile Read(JsonCursor root)
    {
        ReadingJson.ExpectSchema(root, TruthFile.SchemaId);
        return new TruthFile
        {
            Image = FilmBlocks.ReadImage(root.Required("image")),
            View = FilmBlocks.ReadView(root.Required("view")),
            Side = root.Required("side").Word(Vocabularies.Side),
            Patient = FilmBlocks.ReadPatient(root.Required("patient")),
            Context = root.Required("context").Word(Vocabularies.Context),
            Landmarks = LandmarkBlock.ReadTrue(root.Required("landmarks")),
            Lines = root.Optional("lines") is { } lines ? MeasurementBlocks.ReadLines(lines) : [],
            Circles = root.Optional("circles") is { } circles ? MeasurementBlocks.ReadCircles(circles) : [],
            Measurements = root.Optional("measurements") is { } m ? MeasurementBlocks.ReadMeasurements(m) : [],
            Simulated = root.Optional("simulated") is { } simulated ? ReadSimulated(simulated) : null,
            NotElbow = root.Optional("notElbow") is { } other
                ? new NotElbowFacts(other.Required("seed").Unsigned(), other.Required("shows").Text(), other.Required("version").Text())
                : null,
        };
    }

    private static SimulatedFacts ReadSimulated(JsonCursor simulated) => new(
        simulated.Required("seed").Unsigned(),
        FilmBlocks.AgeMonths(simulated.Required("ageMonths")) ?? throw simulated.Fail("must give ageMonths"),
        simulated.Required("sex").Word(Vocabularies.Sex),
        simulated.Required("side").Word(Vocabularies.Side),
        simulated.Required("injuries").Items(i => i.Text()),
        simulated.Required("viewErrorDegrees").Number(),
        simulated.Optional("exposure")?.Figures() ?? new Dictionary<string, double>(StringComparer.Ordinal),
        simulated.Optional("neutral")?.Figures() ?? new Dictionary<string, double>(StringComparer.Ordinal));
}
