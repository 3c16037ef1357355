using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;
using ElbowAssist.Testing;
using DicomSample = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

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

        ForbiddenWords.AssertNone(File.ReadAllText(folder.File("out", "summary.md")), "summary.md");
        Assert.Contains("| elsewhere | lateral | radial | mm |", File.ReadAllText(folder.File("out", "summary.md")), StringComparison.Ordinal);

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

    [Fact] // Reader a is 2 pixels of 0.2 mm from the reference; reader r of the store moved one landmark by 5 pixels, alone and after the tool's.
    public void ReadersOfAFileAndOfAStore_AreHeldAgainstEachOtherAndTheModels()
    {
        var laid = JsonNode.Parse(Coco(2))!;
        foreach (var annotation in laid["annotations"]!.AsArray())
        {
            annotation!["annotator"] = "a";
        }

        folder.Write("a.json", JsonSerializer.SerializeToUtf8Bytes(laid));
        // One film of the set has a content of its own.
        folder.Write(Name(0), [.. SampleFilm.Png(), 0]);
        var place = SampleLandmarks.Lateral(LandmarkSource.Reader).First(l => l.Name == LandmarkNames.HumerusFossaRoof).Position!.Value + new Geometry.Vector(5, 0);
        using (var store = StudyStore.Open(folder.File("studies.sqlite")))
        {
            var study = store.Create("study", "films");
            var film = store.AddFilm(study.Id, "x.png", File.ReadAllBytes(folder.File(Name(0))));
            var move = new LandmarkMove(film.Id, LandmarkNames.HumerusFossaRoof, null, place, DateTimeOffset.UnixEpoch);
            var (from, to) = (Place("humerus.anterior.3"), Place("humerus.anterior.5"));
            store.Append(study.Id, "r", new LandmarkLaid(move), new OwnLineLaid(film.Id, "anterior-humeral-line", from, to, ToolWasVisible: false));
            store.Append(study.Id, "r", new ProposalsShown(new ToolShown(WalkTopic.Alignment, [], DateTimeOffset.UnixEpoch)), new LandmarkLaid(move with { To = place + new Geometry.Vector(5, 0) }));
        }

        var run = Run("out", "--readers", folder.File("a.json"), folder.File("studies.sqlite"));
        Assert.True(run.ExitCode == 0, run.Error);
        var rows = JsonNode.Parse(File.ReadAllBytes(folder.File("out", "results.json")))!["tables"]!.AsArray().First(t => (string)t!["name"]! == "landmark-agreement")!["rows"]!.AsArray();
        double Distance(string first, string second) => (double)rows.First(r => (string)r!["first"]! == first && (string)r["second"]! == second)!["mean"]!;
        Assert.Equal(0.6, Distance("a", "r"), 6);
        Assert.Equal(1.6, Distance("a", "r, with proposals"), 6);
        Assert.Equal(1.0, Distance("r", "r, with proposals"), 6);
        Assert.Equal(2.0, Distance("r, with proposals", "reference"), 6);
        Assert.Contains(rows, r => (string)r!["first"]! == "one" && (string)r["second"]! == "a");
        // The line drawn by hand runs through two of the landmarks that reader a has 2 pixels beside.
        var line = File.ReadLines(folder.File("out", "line-agreement.csv")).First(l => l.StartsWith("a,r,lateral,anterior-humeral-line,mm,1,", StringComparison.Ordinal)).Split(',');
        Assert.InRange(double.Parse(line[6], CultureInfo.InvariantCulture), 0, 3);
        Assert.InRange(double.Parse(line[11], CultureInfo.InvariantCulture), 0.05, 2);

        Geometry.Point Place(string name) => SampleLandmarks.Lateral(LandmarkSource.Reader).First(l => l.Name == name).Position!.Value;
    }

    [Fact] // Moved by 3 pixels of the 0.125 mm that the header gives.
    public void ADicomFilm_IsMeasuredByTheSpacingOfItsHeader()
    {
        folder.Write("dicom/film.dcm", new DicomSample
        {
            Width = SampleLandmarks.Width,
            Height = SampleLandmarks.Height,
            With = b => b.Decimal(Tag.PixelSpacing, 0.125, 0.125).Text(Tag.PixelSpacingCalibrationType, "FIDUCIAL").Text(Tag.PixelSpacingCalibrationDescription, "ball"),
        }.File());
        folder.Write("dicom/coco.json", Coco(0, null, "film.dcm"));
        folder.Write("elsewhere.json", Coco(3, null, "film.dcm"));
        var run = CommandLine.Run("bench", folder.File("dicom"), "--models", folder.File("one"), "--predictions", folder.File("elsewhere.json"), "--out", folder.File("out"));
        Assert.True(run.ExitCode == 0, run.Error);
        var rows = JsonNode.Parse(File.ReadAllBytes(folder.File("out", "results.json")))!["tables"]!.AsArray().First(t => (string)t!["name"]! == "landmark-errors")!["rows"]!.AsArray();
        Assert.All(rows, r => Assert.Equal("mm", (string)r!["unit"]!));
        Assert.Equal(0.375, (double)rows.First(r => (string)r!["entrant"]! == "elsewhere" && (string)r["error"]! == "radial")!["mean"]!, 6);
        Assert.Equal(0.125, ReadingJson.Read(File.ReadAllBytes(folder.File("out", "answers", "one", "film.dcm.reading.json"))).Image.RowSpacingMm);
    }

    [Fact]
    public void AReaderGivenTwice_IsSaidInOneSentence()
    {
        folder.Write("a.json", Coco(2));
        var run = Run("out", "--readers", folder.File("a.json"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("two placements", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void AForeignModel_IsScoredAndComparedWithoutCode()
    {
        var foreign = Path.Combine(Repository.Root, "tests", "ElbowAssist.Testing", "ForeignModels");
        var compared = CommandLine.Run("models", "compare", Path.Combine(foreign, "foreign-points"), Path.Combine(foreign, "foreign-heatmaps"));
        Assert.Equal(0, compared.ExitCode);
        Assert.Contains("heatmaps, stride 2", compared.Output, StringComparison.Ordinal);
        var run = Run("out", Path.Combine(foreign, "foreign-points"));
        Assert.True(run.ExitCode == 0, run.Error);
        // Two of the landmarks of each film are laid by it, the rest counts as missing.
        Assert.Contains($"foreign-points,lateral,all,radial,mm,{Films},{2 * Films},", File.ReadAllText(folder.File("out", "landmark-errors.csv")), StringComparison.Ordinal);
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

    private static byte[] Coco(double moved) => Coco(moved, 0.2, [.. Enumerable.Range(0, Films).Select(i => Path.GetFileName(Name(i)))]);

    private static byte[] Coco(double moved, double? spacing, params string[] films)
    {
        var landmarks = SampleLandmarks.Lateral(LandmarkSource.Reader).Select(l => l with { Position = l.Position is { } p ? p + new Geometry.Vector(moved, 0) : null }).ToList();
        var file = JsonNode.Parse(CocoKeypoints.Write([.. films.Select(name => new CocoFilm(name, SampleLandmarks.Width, SampleLandmarks.Height, View.Lateral, landmarks))]))!;
        foreach (var image in file["images"]!.AsArray())
        {
            (image!["rowSpacingMm"], image["columnSpacingMm"]) = (spacing, spacing);
        }

        return JsonSerializer.SerializeToUtf8Bytes(file);
    }

    private string[] Arguments(string output) => ["bench", folder.File("films"), "--models", folder.File("one"), "--out", folder.File(output)];

    private RunResult Run(string output, params string[] more)
    {
        // More models follow the first directly.
        var arguments = Arguments(output);
        return CommandLine.Run(more is [var first, ..] && !first.StartsWith('-') ? [.. arguments[..4], .. more, .. arguments[4..]] : [.. arguments, .. more]);
    }

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
