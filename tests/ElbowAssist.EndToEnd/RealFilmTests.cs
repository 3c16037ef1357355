using System.Globalization;
using System.Text.Json;
using ElbowAssist.Testing;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;

namespace ElbowAssist.EndToEnd;

/// <summary>
/// Openly licensed films of patients, where they lie beside the checkout (sources in <c>films/SOURCES.csv</c> there). They
/// are few: they can show a failure, they cannot prove a success. One elbow says nothing about others.
/// </summary>
public sealed class RealFilmTests : IDisposable
{
    private const string Lateral = "films/elbow/normal-elbow-lateral.jpg";
    private readonly TemporaryFolder folder = new();

    [SharedDataFact(Lateral)]
    public void SixteenVersionsOfALateral_AreReadAlike()
    {
        using var film = Image.Load<L8>(SharedData.Find(Lateral)!);
        foreach (var turn in new[] { RotateMode.None, RotateMode.Rotate90, RotateMode.Rotate180, RotateMode.Rotate270 })
        {
            foreach (var flip in new[] { FlipMode.None, FlipMode.Horizontal })
            {
                using var version = film.Clone(c => c.RotateFlip(turn, flip));
                Save(version, $"{turn}-{flip}-as-it-is.png");
                version.Mutate(c => c.Invert());
                Save(version, $"{turn}-{flip}-inverted.png");
            }
        }

        var readings = ReadAll();
        Assert.Equal(16, readings.Count);
        Assert.All(readings, r => Assert.Equal("lateral", r.GetProperty("view").GetProperty("name").GetString()));
        var values = readings.SelectMany(Measured).GroupBy(m => m.Name).ToDictionary(g => g.Key, g => g.ToList());
        Assert.Contains("anterior-humeral-line.position", values.Keys);
        Assert.All(values, m => Assert.All(m.Value, one => Assert.All(m.Value, other => Assert.InRange(other.Value, one.Low, one.High))));
    }

    [SharedDataFact(Lateral)]
    public void ShaftCroppedStepByStep_KeepsThePositionInItsInterval_OrWithholdsIt()
    {
        using var film = Image.Load<L8>(SharedData.Find(Lateral)!);
        for (var percent = 0; percent <= 60; percent += 5)
        {
            // The shaft points up on this film.
            var cut = film.Height * percent / 100;
            using var version = film.Clone(c => c.Crop(new Rectangle(0, cut, film.Width, film.Height - cut)));
            Save(version, string.Create(CultureInfo.InvariantCulture, $"{percent:00}.png"));
        }

        var readings = ReadAll();
        string[] names = ["anterior-humeral-line.position", "anterior-humeral-line.shaft.position"];
        foreach (var name in names)
        {
            var whole = Measured(readings[0]).Single(m => m.Name == name);
            Assert.All(readings.SelectMany(Measured).Where(m => m.Name == name), m => Assert.InRange(m.Value, whole.Low, whole.High));
        }

        Assert.DoesNotContain(Measured(readings[^1]), m => names.Contains(m.Name));
    }

    [SharedDataFact("films/other")]
    public void FilmsOfOtherParts_GetNoMeasurement()
    {
        foreach (var path in Directory.EnumerateFiles(SharedData.Find("films/other")!, "*.jpg"))
        {
            using var film = Image.Load<L8>(path);
            Save(film, Path.GetFileNameWithoutExtension(path) + ".png");
            film.Mutate(c => c.RotateFlip(RotateMode.Rotate90, FlipMode.Horizontal).Invert());
            Save(film, Path.GetFileNameWithoutExtension(path) + "-turned-mirrored-inverted.png");
        }

        Assert.Empty(ReadAll().SelectMany(Measured));
    }

    [SharedDataFact("films/elbow")]
    public void ApAndObliqueElbows_GetNoLateralMeasurement()
    {
        foreach (var path in Directory.EnumerateFiles(SharedData.Find("films/elbow")!, "*.jpg").Where(p => !p.Contains("lateral", StringComparison.Ordinal)))
        {
            using var film = Image.Load<L8>(path);
            Save(film, Path.GetFileNameWithoutExtension(path) + ".png");
        }

        var names = ReadAll().SelectMany(Measured).Select(m => m.Name).ToList();
        Assert.DoesNotContain(names, n => n.StartsWith("anterior-humeral-line", StringComparison.Ordinal) || n.Contains(".lateral.", StringComparison.Ordinal));
    }

    public void Dispose() => folder.Dispose();

    private void Save(Image film, string name)
    {
        Directory.CreateDirectory(folder.File("films"));
        film.SaveAsPng(folder.File("films", name));
    }

    private List<JsonElement> ReadAll()
    {
        var run = CommandLine.Run("read", folder.File("films"), "--out", folder.File("out"));
        Assert.True(run.ExitCode is 0 or 3, run.Error);
        return [.. Directory.EnumerateFiles(folder.File("out"), "*.reading.json").Order(StringComparer.Ordinal)
            .Select(f => JsonDocument.Parse(File.ReadAllBytes(f)).RootElement)];
    }

    private static IEnumerable<(string Name, double Value, double Low, double High)> Measured(JsonElement reading) =>
        from m in reading.GetProperty("measurements").EnumerateArray()
        where m.GetProperty("value").ValueKind == JsonValueKind.Number
        let redraw = m.GetProperty("redraw95")
        select (m.GetProperty("name").GetString()!, m.GetProperty("value").GetDouble(), redraw[0].GetDouble(), redraw[1].GetDouble());
}
