using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;
using ElbowAssist.Testing;
using Json.Schema;

namespace ElbowAssist.EndToEnd;

public sealed class ReadPlacementsTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Film_WithLandmarks_GetsItsReadingAndOverlays()
    {
        var film = PlacedFilm.Film(folder);
        var run = CommandLine.Run("read", film, "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"),
            "--age", "34", "--sex", "F", "--side", "left", "--spacing", "0.15");
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("film.png: lateral, ", run.OutputLines[0], StringComparison.Ordinal);
        Assert.Equal(Caution.Text, run.OutputLines[^1]);
        Assert.Equal(
            ["film.png.overlay.png", "film.png.overlay.svg", "film.png.reading.json"],
            Directory.GetFiles(folder.File("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal));

        var json = File.ReadAllBytes(folder.File("out", "film.png.reading.json"));
        using var document = JsonDocument.Parse(json);
        Assert.True(JsonSchema.FromText(Schemas.Reading).Evaluate(document.RootElement).IsValid);
        var reading = ReadingJson.Read(json);
        Assert.Equal((408, 0.15, "option"), (reading.Patient.AgeMonths, reading.Image.RowSpacingMm, reading.Image.SpacingSource));

        // The fitted circle has its centre at x = 382 and radius 62; the cortex line, through (374.33, 425) and leaning by
        // 0.637°, crosses the centre's height at x = 371.94 and so lies 10.06 before the centre: 0.5 − 10.06/124 = 0.419.
        var position = reading.Measurements.Single(m => m.Name == "anterior-humeral-line.position");
        Assert.Equal(0.419, position.Value!.Value, 2);
        Assert.True(position.Redraw95!.Value.Low < position.Value && position.Value < position.Redraw95.Value.High);
    }

    [Fact]
    public void EveryOutput_CarriesTheCautionAndNoReassuringWord()
    {
        var run = CommandLine.Run("read", PlacedFilm.Film(folder), "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"));
        ForbiddenWords.AssertNone(run.Output, "Standard output");
        foreach (var path in Directory.GetFiles(folder.File("out")).Where(f => !f.EndsWith(".png", StringComparison.Ordinal)))
        {
            var text = File.ReadAllText(path, Encoding.UTF8);
            Assert.Contains(Caution.LastSentence, text, StringComparison.Ordinal);
            ForbiddenWords.AssertNone(WithoutPicture(text), Path.GetFileName(path));
        }
    }

    [Fact]
    public void Outputs_AreTheSameBytesOnEveryRun_ButForTiming()
    {
        var film = PlacedFilm.Film(folder);
        var landmarks = PlacedFilm.Landmarks(folder);
        foreach (var output in new[] { "one", "two" })
        {
            Assert.Equal(0, CommandLine.Run("read", film, "--landmarks", landmarks, "--out", folder.File(output)).ExitCode);
        }

        foreach (var name in new[] { "film.png.overlay.svg", "film.png.overlay.png" })
        {
            Assert.Equal(File.ReadAllBytes(folder.File("one", name)), File.ReadAllBytes(folder.File("two", name)));
        }

        Assert.Equal(WithoutTiming("one"), WithoutTiming("two"));
    }

    [Fact]
    public void Sidecar_GivesWhatOptionsLeaveOpen_AndContradictionsAreReported()
    {
        var film = PlacedFilm.Film(folder);
        folder.Write("film.png.info.json", """{"ageMonths": 30, "sex": "M", "side": "right", "rowSpacingMm": 0.2, "columnSpacingMm": 0.2}"""u8);
        var run = CommandLine.Run("read", film, "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"), "--sex", "F");
        Assert.Equal(0, run.ExitCode);
        Assert.Equal("film.png: The option gives the sex as F, the sidecar as M; F is used.", Assert.Single(run.ErrorLines));
        var reading = ReadingJson.Read(File.ReadAllBytes(folder.File("out", "film.png.reading.json")));
        Assert.Equal((30, Anatomy.Sex.Female, Anatomy.Side.Right, "sidecar"),
            (reading.Patient.AgeMonths, reading.Patient.Sex, reading.Side, reading.Image.SpacingSource));
        Assert.Contains(reading.Reasons, r => r.Code == "sex-contradicted");
    }

    [Fact]
    public void WithheldMeasurements_LeakNowhere()
    {
        var run = CommandLine.Run("read", PlacedFilm.Film(folder), "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"), "--age", "3");
        Assert.Equal(0, run.ExitCode);
        var reading = ReadingJson.Read(File.ReadAllBytes(folder.File("out", "film.png.reading.json")));
        var withheld = reading.Measurements.Where(m => m.State == MeasurementState.Withheld).Select(m => m.Name).ToList();
        Assert.NotEmpty(withheld);
        var svg = File.ReadAllText(folder.File("out", "film.png.overlay.svg"));
        Assert.All(withheld, name =>
        {
            Assert.DoesNotContain(reading.Lines, l => l.Name == name);
            Assert.DoesNotContain($"data-name=\"{name}\"", svg, StringComparison.Ordinal);
        });
    }

    public void Dispose() => folder.Dispose();

    private string WithoutTiming(string output)
    {
        var node = JsonNode.Parse(File.ReadAllBytes(folder.File(output, "film.png.reading.json")))!.AsObject();
        Assert.True(node.Remove("timing"));
        return node.ToJsonString();
    }

    private static string WithoutPicture(string svg)
    {
        var from = svg.IndexOf("base64,", StringComparison.Ordinal);
        return from < 0 ? svg : svg.Remove(from, svg.IndexOf('"', from) - from);
    }
}
