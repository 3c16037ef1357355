using System.Text;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

public sealed class BadInputTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Theory]
    [InlineData("text")]
    [InlineData("empty")]
    [InlineData("truncated")]
    [InlineData("enormous")]
    [InlineData("missing")]
    public void FileThatIsNoFilm_IsExplainedInOneSentence_AndLeavesNothing(string kind)
    {
        var path = kind switch
        {
            "text" => folder.Write("bad.png", "This is no picture."u8),
            "empty" => folder.Write("bad.png", []),
            "truncated" => folder.Write("bad.png", SampleFilm.Png().AsSpan(0, 20_000)),
            "enormous" => folder.Write("bad.png", PlainPng.Announcing(20_000, 20_000)),
            _ => folder.File("bad.png"),
        };
        var run = CommandLine.Run("read", path, "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"));
        Assert.Equal(2, run.ExitCode);
        var sentence = Assert.Single(run.ErrorLines);
        Assert.StartsWith("bad.png", sentence, StringComparison.Ordinal);
        Assert.EndsWith(".", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.File("out")) && Directory.EnumerateFiles(folder.File("out")).Any());
    }

    [Fact]
    public void BadFilmAmongGoodOnes_KeepsTheOthers_AndTheWorstDecides()
    {
        PlacedFilm.Film(folder, "films/a.png");
        folder.Write("films/b.png", "no picture"u8);
        PlacedFilm.Film(folder, "films/c.png");
        folder.Write("films/c.png.overlay.png", SampleFilm.Png());
        var coco = Encoding.UTF8.GetBytes(CocoOf("a.png", "c.png"));
        var run = CommandLine.Run("read", folder.File("films"), "--landmarks", folder.Write("coco.json", coco), "--out", folder.File("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.Equal(["a.png:", "b.png:", "c.png:"], run.OutputLines.SkipLast(1).Select(l => l.Split(' ')[0]));
        Assert.True(File.Exists(folder.File("out", "a.png.reading.json")));
        Assert.False(File.Exists(folder.File("out", "b.png.reading.json")));
        Assert.True(File.Exists(folder.File("out", "c.png.reading.json")));
    }

    [Fact]
    public void TwoFilmsOfOneName_AreAnErrorBeforeAnyWork()
    {
        var run = CommandLine.Run("read", PlacedFilm.Film(folder, "one/film.png"), PlacedFilm.Film(folder, "two/film.png"),
            "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"));
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("Two films are named film.png", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Theory]
    [InlineData("--age", "old", "--age takes years from 0 to 125")]
    [InlineData("--sex", "X", "--sex takes F or M")]
    [InlineData("--spacing", "0,1", "--spacing takes millimetres")]
    [InlineData("--view", "sideways", "--view takes")]
    [InlineData("--unknown", "1", "--unknown")]
    public void WrongOption_IsExplained(string option, string value, string expected)
    {
        var run = CommandLine.Run("read", PlacedFilm.Film(folder), option, value);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains(expected, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void WrongSidecar_IsNamed()
    {
        var film = PlacedFilm.Film(folder);
        folder.Write("film.png.info.json", "{\"age\": 3}"u8);
        var run = CommandLine.Run("read", film, "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("film.png.info.json", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void LandmarksOfAnotherView_AreNotForced()
    {
        var run = CommandLine.Run("read", PlacedFilm.Film(folder), "--view", "ap", "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("lateral view, but the film is said to be ap", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void OutputFolderThatIsAFile_IsExplained()
    {
        var blocked = folder.Write("blocked", "a file"u8);
        var run = CommandLine.Run("read", PlacedFilm.Film(folder), "--landmarks", PlacedFilm.Landmarks(folder), "--out", blocked);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("cannot be written", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private static string CocoOf(params string[] films)
    {
        var names = SampleLandmarks.Lateral().Where(l => l.Position is not null).ToList();
        var keypoints = string.Join(", ", names.Select(l => FormattableString.Invariant($"{l.Position!.Value.X - 0.5}, {l.Position.Value.Y - 0.5}, 2")));
        var images = string.Join(", ", films.Select((f, i) => FormattableString.Invariant($"{{\"id\": {i}, \"file_name\": \"{f}\", \"width\": 800, \"height\": 1000}}")));
        var annotations = string.Join(", ", films.Select((_, i) => FormattableString.Invariant($"{{\"id\": {i}, \"image_id\": {i}, \"category_id\": 1, \"keypoints\": [{keypoints}]}}")));
        var category = string.Join(", ", names.Select(l => $"\"{l.Name}\""));
        return $"{{\"images\": [{images}], \"annotations\": [{annotations}], \"categories\": [{{\"id\": 1, \"name\": \"elbow\", \"keypoints\": [{category}]}}]}}";
    }
}
