using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

/// <summary>
/// The bench as a user runs it. <c>ELBOWASSIST_BENCH_KILLS=20</c> ends a run so many times at random moments in place of a few.
/// </summary>
public sealed class BenchTests : IDisposable
{
    private const int Films = 6;
    private readonly TemporaryFolder folder = new();

    public BenchTests()
    {
        for (var i = 0; i < Films; i++)
        {
            PlacedFilm.Film(folder, Name(i));
        }

        folder.Write("films/coco.json", Coco(0));
        ModelFolders.LateralLayout(folder);
        ModelFolders.View(folder);
        Directory.CreateDirectory(folder.File("one"));
        Directory.Move(folder.File("lateral"), folder.File("one", "lateral"));
        Directory.Move(folder.File("view"), folder.File("one", "view"));
    }

    [Fact]
    public void Report_HoldsTheFiguresThreeTimes_AndNeedsNothingElse()
    {
        folder.Write("elsewhere.json", Coco(3));
        var run = Run("out", "--predictions", folder.File("elsewhere.json"));
        Assert.DoesNotContain(run.ErrorLines, l => !l.Contains("films/s", StringComparison.Ordinal));
        Assert.Equal(0, run.ExitCode);
        Assert.Contains(Caution.LastSentence, run.Output, StringComparison.Ordinal);
        var page = File.ReadAllText(folder.File("out", "report.html"));
        Assert.Contains(Caution.Text, page, StringComparison.Ordinal);
        Assert.DoesNotMatch(new Regex("(src|href)=\"(?!data:)"), page);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        ForbiddenWords.AssertNone(page, "report.html");

        var results = JsonNode.Parse(File.ReadAllBytes(folder.File("out", "results.json")))!;
        foreach (var table in results["tables"]!.AsArray().Concat(results["timing"]!.AsArray()))
        {
            var rows = File.ReadAllLines(folder.File("out", $"{table!["name"]}.csv"));
            Assert.Equal(table["rows"]!.AsArray().Count, rows.Length - 1);
            // Curves are drawn and not written out.
            Assert.True(((string)table["name"]!).EndsWith("-curve", StringComparison.Ordinal) || page.Contains($"<b>{table["name"]}</b>", StringComparison.Ordinal), (string)table["name"]!);
        }

        // Moved by 3 pixels of 0.2 mm.
        var radial = results["tables"]!.AsArray().First(t => (string)t!["name"]! == "landmark-errors")!["rows"]!.AsArray()
            .First(r => (string)r!["entrant"]! == "elsewhere" && (string)r["group"]! == "all" && (string)r["error"]! == "radial")!;
        Assert.Equal(0.6, (double)radial["mean"]!, 6);
        Assert.Contains(((double)radial["mean"]!).ToString("R", CultureInfo.InvariantCulture), File.ReadAllText(folder.File("out", "landmark-errors.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void EndedAtRandomMoments_TheReportIsThatOfARunThatWasNot()
    {
        var started = Stopwatch.GetTimestamp();
        Assert.Equal(0, Run("whole").ExitCode);
        var whole = Stopwatch.GetElapsedTime(started);
        var random = new Random(8);
        var kills = int.Parse(Environment.GetEnvironmentVariable("ELBOWASSIST_BENCH_KILLS") ?? "3", CultureInfo.InvariantCulture);
        for (var i = 0; i < kills; i++)
        {
            using var process = CommandLine.Start(Arguments("ended"));
            Thread.Sleep(random.NextDouble() * whole);
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
        }

        Assert.Equal(0, Run("ended").ExitCode);
        Assert.Equal(Files("whole"), Files("ended"));
        Assert.All(Files("whole"), f => Assert.Equal(Untimed("whole", f), Untimed("ended", f)));
    }

    [Fact]
    public void AnotherBench_IsNotMixedIn()
    {
        Assert.Equal(0, Run("out").ExitCode);
        folder.Write("films/coco.json", Coco(1));
        var second = Run("out");
        Assert.Equal(1, second.ExitCode);
        Assert.Contains("data set", Assert.Single(second.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void AFilmThatCannotBeRead_IsSaid_AndCountsAsNotLaid()
    {
        folder.Write(Name(0), "no film"u8);
        var run = Run("out");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("00.png", run.Error, StringComparison.Ordinal);
        Assert.StartsWith($"one,{Films},{Films},{Films - 1},", File.ReadAllLines(folder.File("out", "entrants.csv"))[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bench", "nowhere")]
    [InlineData("bench", "--models", "one")]
    [InlineData("bench", "films", "--readings", "x", "--models", "one")]
    [InlineData("bench", "films", "--models", "no-such-model")]
    public void WhatDoesNotFit_IsSaidInOneSentence(params string[] arguments)
    {
        var run = CommandLine.Run([.. arguments.Select(a => a is "films" or "one" ? folder.File(a) : a), "--out", folder.File("out")]);
        Assert.Equal(1, run.ExitCode);
        Assert.DoesNotContain("   at ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    private static string Name(int film) => string.Create(CultureInfo.InvariantCulture, $"films/{film:00}.png");

    private static byte[] Coco(double moved)
    {
        var landmarks = SampleLandmarks.Lateral(LandmarkSource.Reader).Select(l => l with { Position = l.Position is { } p ? p + new Geometry.Vector(moved, 0) : null }).ToList();
        var file = JsonNode.Parse(CocoKeypoints.Write([.. Enumerable.Range(0, Films).Select(i => new CocoFilm(Path.GetFileName(Name(i)), SampleLandmarks.Width, SampleLandmarks.Height, View.Lateral, landmarks))]))!;
        foreach (var image in file["images"]!.AsArray())
        {
            (image!["rowSpacingMm"], image["columnSpacingMm"]) = (0.2, 0.2);
        }

        return JsonSerializer.SerializeToUtf8Bytes(file);
    }

    private string[] Arguments(string output) => ["bench", folder.File("films"), "--models", folder.File("one"), "--out", folder.File(output)];

    private RunResult Run(string output, params string[] more) => CommandLine.Run([.. Arguments(output), .. more]);

    private string[] Files(string output) =>
        [.. Directory.EnumerateFiles(folder.File(output), "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(folder.File(output), f)).Where(f => f is not ("time.csv" or "run.csv")).Order(StringComparer.Ordinal)];

    /// <summary>A file without what is told of time.</summary>
    private string Untimed(string output, string file)
    {
        var text = File.ReadAllText(folder.File(output, file));
        return Path.GetExtension(file) switch
        {
            ".json" when JsonNode.Parse(text) is JsonObject json && json.Remove("timing") => json.ToJsonString(),
            ".html" => Regex.Replace(text, "<section id=\"timing\">.*</section><!-- timing -->", "", RegexOptions.Singleline, TimeSpan.FromSeconds(10)),
            _ => text,
        };
    }
}
