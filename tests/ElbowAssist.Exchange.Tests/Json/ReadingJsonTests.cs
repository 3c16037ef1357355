using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Exchange.Tests.Json;

public sealed class ReadingJsonTests
{
    public static TheoryData<string> Samples => ["lateral", "ap", "refused"];

    [Theory]
    [MemberData(nameof(Samples))]
    public void Reading_WrittenReadAndWrittenAgain_GivesTheSameBytes(string sample)
    {
        var written = ReadingJson.Write(Sample(sample));
        Assert.Equal(Encoding.UTF8.GetString(written), Encoding.UTF8.GetString(ReadingJson.Write(ReadingJson.Read(written))));
    }

    [Fact]
    public void Landmarks_OfAnyFinitePlace_ComeBackExactly()
    {
        var number = Gen.Double[-1e5, 1e5];
        Gen.Select(number, number, Gen.Double[1e-9, 1e4], Gen.Double[1e-9, 1e4], Gen.Double[-0.99, 0.99], Gen.Double[0, 1]).Sample((x, y, xx, yy, r, v) =>
        {
            var landmark = new Landmark("ulna.coronoid", LandmarkKind.Point, new Point(x, y),
                new Covariance(xx, r * Math.Sqrt(xx * yy), yy), v, LandmarkSource.Model);
            var back = ReadingJson.Read(ReadingJson.Write(SampleReadings.Ap() with { Landmarks = [landmark] }));
            Assert.Equal(landmark, Assert.Single(back.Landmarks));
        }, iter: 200);
    }

    [Fact]
    public void Members_StandInTheOrderOfTheFormat()
    {
        using var document = JsonDocument.Parse(ReadingJson.Write(SampleReadings.Lateral()));
        Assert.Equal(
            ["schema", "tool", "models", "image", "view", "side", "patient", "context", "adequacy", "landmarks", "lines",
             "circles", "measurements", "evidence", "prompts", "reasons", "caution", "timing"],
            document.RootElement.EnumerateObject().Select(m => m.Name));
        Assert.Equal(
            ["name", "kind", "x", "y", "covariance", "visibility", "source"],
            document.RootElement.GetProperty("landmarks")[0].EnumerateObject().Select(m => m.Name));
        Assert.Equal(
            ["name", "value", "unit", "redraw95", "state", "reasons", "zones", "note", "source"],
            document.RootElement.GetProperty("measurements")[0].EnumerateObject().Select(m => m.Name));
    }

    [Fact]
    public void Words_AreTheFixedOnes()
    {
        var json = Encoding.UTF8.GetString(ReadingJson.Write(SampleReadings.Lateral()));
        Assert.Contains("\"state\": \"either-side\"", json, StringComparison.Ordinal);
        Assert.Contains("\"state\": \"look-here\"", json, StringComparison.Ordinal);
        Assert.Contains("\"sex\": \"F\"", json, StringComparison.Ordinal);
        Assert.Contains("\"covariance\": [[1.5, 0.2], [0.2, 4]]", json, StringComparison.Ordinal);
        Assert.Contains("\"redraw95\": [36.8, 41.6]", json, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Reading_CarriesTheCautionAndNoReassuringWord(string sample)
    {
        var json = Encoding.UTF8.GetString(ReadingJson.Write(Sample(sample)));
        Assert.Contains(Caution.Text, json, StringComparison.Ordinal);
        ForbiddenWords.AssertNone(json, "The reading");
    }

    [Fact]
    public void Write_OfAWithheldMeasurementWithALine_IsRefusedAsABug()
    {
        var reading = SampleReadings.Ap();
        var leak = reading with { Lines = [.. reading.Lines, new NamedLine("baumann-angle", new Point(1, 1), new Vector(1, 0))] };
        Assert.Contains("baumann-angle", Assert.Throws<InvalidOperationException>(() => ReadingJson.Write(leak)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_OfARefusedReadingWithLandmarks_IsRefusedAsABug() =>
        Assert.Throws<InvalidOperationException>(() =>
            ReadingJson.Write(SampleReadings.Refused() with { Landmarks = SampleLandmarks.Ap() }));

    [Theory]
    [InlineData("measurements.0.state", "\"withheld\"", "withheld")]
    [InlineData("side", "\"L\"", "side must be left, right or unknown")]
    [InlineData("image.width", "0", "image.width must be above 0")]
    [InlineData("landmarks.3.x", "null", "landmarks[3] must have both x and y")]
    [InlineData("landmarks.3.covariance", "[[1, 2], [2, 1]]", "landmarks[3].covariance is not a covariance matrix")]
    [InlineData("measurements.0.redraw95", "[2, 1]", "measurements[0].redraw95 must run from low to high")]
    [InlineData("schema", "\"elbowassist/reading/2\"", "schema must be \"elbowassist/reading/1\"")]
    [InlineData("patient.ageMonths", "-1", "patient.ageMonths")]
    [InlineData("caution", "\"All is well.\"", "caution")]
    [InlineData("timing", "[]", "timing must be an object")]
    public void Read_OfAWrongMember_SaysWhereInOneSentence(string path, string value, string expected)
    {
        var root = JsonNode.Parse(ReadingJson.Write(SampleReadings.Lateral()))!;
        Replace(root, path.Split('.'), JsonNode.Parse(value));
        var message = Assert.Throws<ExchangeFormatException>(() => ReadingJson.Read(Encoding.UTF8.GetBytes(root.ToJsonString()))).Message;
        Assert.Contains(expected, message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', message);
        Assert.EndsWith(".", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "not valid JSON")]
    [InlineData("{", "not valid JSON (line 1)")]
    [InlineData("[]", "must be an object")]
    [InlineData("{\"schema\": \"elbowassist/reading/1\", \"schema\": \"elbowassist/reading/1\"}", "not valid JSON")]
    [InlineData("{\"schema\": \"elbowassist/reading/1\"}", "lacks \"tool\"")]
    public void Read_OfSomethingElse_SaysSo(string text, string expected) =>
        Assert.Contains(expected, Assert.Throws<ExchangeFormatException>(() => ReadingJson.Read(Encoding.UTF8.GetBytes(text))).Message, StringComparison.Ordinal);

    [Fact]
    public void Read_ToleratesAByteOrderMark() =>
        Assert.Equal("sample.png", ReadingJson.Read(new byte[] { 0xEF, 0xBB, 0xBF }.Concat(ReadingJson.Write(SampleReadings.Ap())).ToArray()).Image.File);

    private static FilmReading Sample(string name) => name switch
    {
        "lateral" => SampleReadings.Lateral(),
        "ap" => SampleReadings.Ap(),
        _ => SampleReadings.Refused(),
    };

    private static void Replace(JsonNode node, ReadOnlySpan<string> path, JsonNode? value)
    {
        var isIndex = int.TryParse(path[0], System.Globalization.CultureInfo.InvariantCulture, out var index);
        if (path.Length > 1)
        {
            Replace(isIndex ? node[index]! : node[path[0]]!, path[1..], value);
        }
        else
        {
            node[path[0]] = value;
        }
    }
}
