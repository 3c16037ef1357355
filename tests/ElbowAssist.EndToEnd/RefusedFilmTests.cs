using System.Text.Json;
using ElbowAssist.Testing;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace ElbowAssist.EndToEnd;

/// <summary>What decodes but is no usable radiograph gets a refusal with its reason, written as a reading.</summary>
public sealed class RefusedFilmTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Theory]
    [InlineData("photograph")]
    [InlineData("one-pixel")]
    [InlineData("blank")]
    [InlineData("noise")]
    [InlineData("ramp")]
    public void PictureThatIsNoUsableRadiograph_IsRefused_AndItsReadingSaysWhy(string kind)
    {
        var random = new Random(1);
        var path = kind switch
        {
            "photograph" => Photograph(),
            "one-pixel" => folder.Write("film.png", PlainPng.Grey16(1, 1, (_, _) => 30_000)),
            "blank" => folder.Write("film.png", PlainPng.Blank(700, 900)),
            "noise" => folder.Write("film.png", PlainPng.Grey16(700, 900, (_, _) => (ushort)random.Next(65_536))),
            _ => folder.Write("film.png", PlainPng.Grey16(700, 900, (x, y) => (ushort)((40 * x) + (30 * y)))),
        };
        var run = CommandLine.Run("read", path, "--out", folder.File("out"));
        Assert.Equal(3, run.ExitCode);
        Assert.StartsWith("film.png: no reading. ", run.OutputLines[0], StringComparison.Ordinal);

        using var reading = JsonDocument.Parse(File.ReadAllBytes(folder.File("out", "film.png.reading.json")));
        var root = reading.RootElement;
        Assert.True(root.GetProperty("adequacy").GetProperty("refused").GetBoolean());
        Assert.NotEqual(0, root.GetProperty("reasons").GetArrayLength());
        Assert.All(["landmarks", "lines", "circles"], block => Assert.Equal(0, root.GetProperty(block).GetArrayLength()));
        Assert.All(root.GetProperty("measurements").EnumerateArray(), m => Assert.Equal(JsonValueKind.Null, m.GetProperty("value").ValueKind));
    }

    [Fact]
    public void EnormousFilm_IsTurnedAwayBeforeItFillsTheMemory()
    {
        var path = folder.Write("film.png", PlainPng.Blank(20_000, 20_000));
        var run = CommandLine.RunWithHeapLimit(128 << 20, "read", path, "--out", folder.File("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("film.png", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.9)]
    public void TruncatedJpeg_IsTurnedAway(double share)
    {
        var whole = File.ReadAllBytes(Photograph());
        folder.Write("cut.jpg", whole.AsSpan(0, (int)(share * whole.Length)));
        var run = CommandLine.Run("read", folder.File("cut.jpg"), "--out", folder.File("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("cut.jpg", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    /// <summary>A coloured scene: sky, hill, a sun and a house, with the soft noise of a camera.</summary>
    private string Photograph()
    {
        var random = new Random(2);
        using var scene = new Image<Rgb24>(900, 600);
        for (var y = 0; y < scene.Height; y++)
        {
            for (var x = 0; x < scene.Width; x++)
            {
                var sun = Math.Sqrt(((x - 700.0) * (x - 700)) + ((y - 120.0) * (y - 120))) < 60;
                var house = x is > 150 and < 380 && y is > 300 and < 520;
                var hill = y > 380 + (60 * Math.Sin(x / 140.0));
                var (r, g, b) = sun ? (250, 230, 120) : house ? (180, 70, 60) : hill ? (70, 130, 50) : (110 + (y / 6), 160 + (y / 8), 235);
                byte Grain(int value) => (byte)Math.Clamp(value + random.Next(-9, 10), 0, 255);
                scene[x, y] = new Rgb24(Grain(r), Grain(g), Grain(b));
            }
        }

        scene.SaveAsJpeg(folder.File("film.png"));
        File.Move(folder.File("film.png"), folder.File("film.jpg"));
        File.Copy(folder.File("film.jpg"), folder.File("film.png"));
        return folder.File("film.png");
    }
}
