using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using ElbowAssist.Batch.Tests.Support;
using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests;

/// <summary>The command <c>batch</c> without a server.</summary>
public sealed class LocalBatchTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Reading_IsTheSameForAnyNumberOfThreads_InAnyOrder_AndThatOfRead()
    {
        var films = Directory.GetFiles(Path.Combine(Repository.Root, "src", "ElbowAssist.Cli", "Demo", "adult-two-views"), "*.png*")
            .Concat(Directory.GetFiles(Path.Combine(Repository.Root, "src", "ElbowAssist.Cli", "Demo", "adult-film"), "*.png*"));
        foreach (var film in films)
        {
            folder.Write("films/" + Path.GetFileName(film), File.ReadAllBytes(film));
        }

        // The same films under names that turn their order round; the name of a film is part of its reading.
        string[] names = [.. Directory.GetFiles(folder.File("films"), "*.png").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];
        for (var i = 0; i < names.Length; i++)
        {
            foreach (var suffix in new[] { "", ".info.json" })
            {
                folder.Write(string.Create(CultureInfo.InvariantCulture, $"turned/{9 - i}/{names[i]}{suffix}"), File.ReadAllBytes(folder.File("films", names[i] + suffix)));
            }
        }

        Assert.Equal(0, Program.Run(null, "batch", folder.File("films"), "--out", folder.File("one.jsonl"), "--threads", "1").ExitCode);
        Assert.Equal(0, Program.Run(null, "batch", folder.File("turned"), "--out", folder.File("four.jsonl"), "--threads", "4").ExitCode);
        Assert.Equal(0, Program.Run(null, "read", folder.File("films", names[0]), "--out", folder.File("read"), "--only", "reading").ExitCode);
        var one = Readings("one.jsonl");
        Assert.Equal(3, one.Count);
        Assert.Equal(one, Readings("four.jsonl"));

        // A single film is read with more threads within the network than one of many.
        var single = JsonNode.Parse(File.ReadAllBytes(folder.File("read", names[0] + ".reading.json")))!;
        single["timing"] = new JsonObject();
        var same = new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.Default };
        Assert.Equal(JsonNode.Parse(one[names[0]])!.ToJsonString(same), single.ToJsonString(same));
    }

    [Fact]
    public void StoppedBatch_FinishesWhatItHasInHand_AndGoesOnLater()
    {
        var models = TinyModels.Write(folder);
        var films = SmallFilms.Write(folder, 130);
        var results = folder.File("results.jsonl");
        using (var process = Program.Start(models, null, "batch", films, "--out", results))
        {
            while (!process.HasExited && (!File.Exists(results) || new FileInfo(results).Length == 0))
            {
                Thread.Sleep(5);
            }

            Program.Signal(process, "-TERM"); // takes the same way as Ctrl-C, which a background process ignores
            var (exitCode, _, error) = Program.Finish(process);
            Assert.Equal(1, exitCode);
            Assert.Contains("run the same command again to go on", error, StringComparison.Ordinal);
        }

        var first = File.ReadAllText(results);
        Assert.EndsWith("}\n", first, StringComparison.Ordinal);
        Assert.InRange(first.Count(c => c == '\n'), 1, 129);

        var (again, output, _) = Program.Run(models, "batch", films, "--out", results);
        Assert.Equal(2, again); // some are damaged
        Assert.Contains("Nothing here excludes a fracture.", output, StringComparison.Ordinal);
        Assert.StartsWith(first, File.ReadAllText(results), StringComparison.Ordinal);
        Assert.Equal(130, TinyModels.LinesOf(results).Count);
        Program.Run(models, "batch", films, "--out", folder.File("whole.jsonl"));
        Assert.Equal(TinyModels.LinesOf(folder.File("whole.jsonl")), TinyModels.LinesOf(results));
    }

    [Fact]
    public void LocaleAndTimeZone_ChangeNothing()
    {
        var models = TinyModels.Write(folder);
        var films = SmallFilms.Write(folder, 25);
        var lines = new[] { ("C", "UTC"), ("de_DE.UTF-8", "Asia/Kathmandu"), ("tr_TR.UTF-8", "Pacific/Apia"), ("ar_SA.UTF-8", "America/St_Johns") }.Select((place, i) =>
        {
            var results = folder.File(string.Create(CultureInfo.InvariantCulture, $"{i}.jsonl"));
            Program.Finish(Program.Start(models, new Dictionary<string, string>(StringComparer.Ordinal) { ["LC_ALL"] = place.Item1, ["LANG"] = place.Item1, ["TZ"] = place.Item2 }, "batch", films, "--out", results));
            return TinyModels.LinesOf(results);
        }).ToList();
        Assert.Equal(25, lines[0].Count);
        Assert.All(lines, l => Assert.Equal(lines[0], l));
    }

    [Fact]
    public void ModelsSwappedMeanwhile_AreNotMixed()
    {
        var models = TinyModels.Write(folder);
        var films = SmallFilms.Write(folder, 60);
        var results = folder.File("results.jsonl");
        using (var process = Program.Start(models, null, "batch", films, "--out", results))
        {
            while (!process.HasExited && (!File.Exists(results) || new FileInfo(results).Length == 0))
            {
                Thread.Sleep(5);
            }

            // The loaded models go on to be used: their bytes were hashed when they were read.
            var manifest = Path.Combine(models, "lateral", "model.json");
            File.WriteAllText(manifest, File.ReadAllText(manifest).Replace("For tests only.", "For other tests only.", StringComparison.Ordinal));
            Assert.Equal(2, Program.Finish(process).ExitCode);
        }

        Assert.Single(TinyModels.LinesOf(results).Select(l => JsonDocument.Parse(l).RootElement.GetProperty("models").GetString()).Distinct(StringComparer.Ordinal));
        var (exitCode, _, error) = Program.Run(models, "batch", films, "--out", results);
        Assert.Equal(1, exitCode);
        Assert.Contains("other models", error, StringComparison.Ordinal);
    }

    [Fact]
    public void PlaceThatCannotBeWritten_IsSaidInASentence()
    {
        var models = TinyModels.Write(folder);
        AssertSaid(Program.Run(models, "batch", SmallFilms.Write(folder, 2), "--out", "/proc/results.jsonl"), "cannot be written");
    }

    [Fact]
    public void FullDisk_IsSaidInASentence_AndGoneOnWithOnceThereIsRoom()
    {
        var models = TinyModels.Write(folder);
        var (films, results) = (SmallFilms.Write(folder, 30), folder.File("results.jsonl"));
        using (var limited = Program.StartWithFileLimit(models, 64, "batch", films, "--out", results))
        {
            AssertSaid(Program.Finish(limited), "make room and run the same command again");
        }

        Assert.InRange(TinyModels.LinesOf(results).Count, 1, 29);
        Assert.EndsWith("}\n", File.ReadAllText(results), StringComparison.Ordinal);
        Program.Run(models, "batch", films, "--out", results);
        Assert.Equal(30, TinyModels.LinesOf(results).Count);
    }

    public void Dispose() => folder.Dispose();

    private static void AssertSaid((int ExitCode, string Output, string Error) run, string sentence)
    {
        Assert.Equal(1, run.ExitCode);
        Assert.Contains(sentence, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    private Dictionary<string, string> Readings(string results) => File.ReadLines(folder.File(results)).Select(l => JsonDocument.Parse(l).RootElement)
        .ToDictionary(l => Path.GetFileName(l.GetProperty("film").GetString()!), l => l.GetProperty("reading").GetRawText(), StringComparer.Ordinal);
}
