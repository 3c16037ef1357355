using System.Text.Json;
using System.Text.Json.Nodes;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Testing;
using Json.Schema;

namespace ElbowAssist.Exchange.Tests.Json;

/// <summary>The schemas hold for what is written and reject what must not be. Judge: JsonSchema.Net, draft 2020-12.</summary>
public sealed class SchemaTests
{
    private static readonly JsonSchema ReadingSchema = JsonSchema.FromText(Schemas.Reading);
    private static readonly JsonSchema TruthSchema = JsonSchema.FromText(Schemas.Truth);
    private static readonly JsonSchema SidecarSchema = JsonSchema.FromText(Schemas.Sidecar);

    [Fact]
    public void Schemas_FollowTheMetaschema()
    {
        foreach (var text in new[] { Schemas.Reading, Schemas.Truth, Schemas.Sidecar })
        {
            using var document = JsonDocument.Parse(text);
            Assert.Equal("https://json-schema.org/draft/2020-12/schema", document.RootElement.GetProperty("$schema").GetString());
            AssertValid(MetaSchemas.Draft202012, document.RootElement);
        }
    }

    [Fact]
    public void WrittenReadings_AreValid()
    {
        foreach (var reading in new[] { SampleReadings.Lateral(), SampleReadings.Ap(), SampleReadings.Refused() })
        {
            using var document = JsonDocument.Parse(ReadingJson.Write(reading));
            AssertValid(ReadingSchema, document.RootElement);
        }
    }

    [Theory]
    [InlineData("withheld with a value")]
    [InlineData("measured without a value")]
    [InlineData("refused with landmarks")]
    [InlineData("x without y")]
    [InlineData("caution cut short")]
    [InlineData("unknown state")]
    public void BrokenReadings_AreNot(string breach)
    {
        var root = JsonNode.Parse(ReadingJson.Write(SampleReadings.Lateral()))!;
        switch (breach)
        {
            case "withheld with a value": root["measurements"]![0]!["state"] = "withheld"; break;
            case "measured without a value": root["measurements"]![0]!["value"] = null; break;
            case "refused with landmarks": root["adequacy"]!["refused"] = true; break;
            case "x without y": root["landmarks"]![0]!["y"] = null; break;
            case "caution cut short": root["caution"] = "Not a medical device."; break;
            default: root["measurements"]![0]!["state"] = "fine"; break;
        }

        using var document = JsonDocument.Parse(root.ToJsonString());
        Assert.False(ReadingSchema.Evaluate(document.RootElement).IsValid);
    }

    [Fact]
    public void WrittenTruth_IsValidAndComesBack()
    {
        var bytes = TruthJson.Write(SampleTruth());
        using var document = JsonDocument.Parse(bytes);
        AssertValid(TruthSchema, document.RootElement);
        var back = TruthJson.Read(bytes);
        Assert.Equal(ulong.MaxValue, back.Simulated!.Seed);
        Assert.Equal(SampleTruth().Landmarks, back.Landmarks);
        Assert.Equal(36.5, back.Simulated.Neutral["shaft-condylar-angle"]);
    }

    [Fact]
    public void TruthOfAPictureWithoutAnElbow_IsValidAndComesBack()
    {
        var bytes = TruthJson.Write(SampleTruth() with { Landmarks = [], Simulated = null, NotElbow = new NotElbowFacts(12, "knee", "as-taken") });
        using var document = JsonDocument.Parse(bytes);
        AssertValid(TruthSchema, document.RootElement);
        Assert.Equal(new NotElbowFacts(12, "knee", "as-taken"), TruthJson.Read(bytes).NotElbow);
        Assert.Null(TruthJson.Read(TruthJson.Write(SampleTruth())).NotElbow);
        var nameless = JsonNode.Parse(bytes)!;
        nameless["notElbow"]!.AsObject().Remove("shows");
        using var broken = JsonDocument.Parse(nameless.ToJsonString());
        Assert.False(TruthSchema.Evaluate(broken.RootElement).IsValid);
    }

    [Fact]
    public void WrittenSidecar_IsValidAndComesBack()
    {
        var facts = new FilmFacts("sidecar") { RowSpacingMm = 0.14, ColumnSpacingMm = 0.15, AgeMonths = 71, Sex = Sex.Male, Side = Side.Right, Context = FilmContext.FollowUp, View = View.Ap };
        var bytes = SidecarJson.Write(facts);
        using var document = JsonDocument.Parse(bytes);
        AssertValid(SidecarSchema, document.RootElement);
        Assert.Equal(facts, SidecarJson.Read(bytes));
    }

    [Theory]
    [InlineData("""{"ageMonth": 70}""")]
    [InlineData("""{"rowSpacingMm": 0.1}""")]
    [InlineData("""{"rowSpacingMm": 0, "columnSpacingMm": 0}""")]
    [InlineData("""{"sex": "f"}""")]
    [InlineData("""{"side": 3}""")]
    public void WrongSidecars_AreWrongBySchemaAndByReader(string text)
    {
        using var document = JsonDocument.Parse(text);
        Assert.False(SidecarSchema.Evaluate(document.RootElement).IsValid);
        Assert.Throws<ExchangeFormatException>(() => SidecarJson.Read(System.Text.Encoding.UTF8.GetBytes(text)));
    }

    private static TruthFile SampleTruth() => new()
    {
        Image = SampleReadings.Lateral().Image,
        View = SampleReadings.Lateral().View,
        Side = Side.Left,
        Patient = new Patient(71, Sex.Male),
        Context = FilmContext.Acute,
        Landmarks = [.. SampleLandmarks.Lateral().Select(l => new TrueLandmark(
            l.Name, l.Kind, l.Position, l.Position is not null && l.Kind == Anatomy.Landmarks.LandmarkKind.Contour ? new Geometry.Vector(0, 1) : null, l.Position is null ? 0 : 1))],
        Lines = SampleReadings.Lateral().Lines,
        Circles = SampleReadings.Lateral().Circles,
        Measurements = SampleReadings.Lateral().Measurements,
        Simulated = new SimulatedFacts(
            ulong.MaxValue, 71, Sex.Male, Side.Left, ["radial-neck"], 2.5,
            new Dictionary<string, double>(StringComparer.Ordinal) { ["tubeKv"] = 60 },
            new Dictionary<string, double>(StringComparer.Ordinal) { ["shaft-condylar-angle"] = 36.5 }),
    };

    private static void AssertValid(JsonSchema schema, JsonElement instance)
    {
        var result = schema.Evaluate(instance, new EvaluationOptions { OutputFormat = OutputFormat.List });
        var errors = result.Details?.Where(d => d.Errors is not null).Select(d => $"{d.InstanceLocation}: {string.Join(' ', d.Errors!.Values)}") ?? [];
        Assert.True(result.IsValid, string.Join('\n', errors));
    }
}
