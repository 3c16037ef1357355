using System.Text;
using System.Text.Json.Nodes;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

/// <summary><c>study</c> on the invented studies of the checkout.</summary>
public sealed class StudyTests
{
    private static string Demo(string name) => Path.Combine(Repository.Root, "src", "ElbowAssist.Cli", "Demo", name);

    [Fact]
    public void AStudy_GivesPageDictationAndJson()
    {
        using var folder = new TemporaryFolder();
        var output = Path.Combine(folder.Path, "out");
        var demo = Demo("child-supracondylar");
        var run = CommandLine.Run("study", demo, "--landmarks", Path.Combine(demo, "landmarks.coco.json"), "--study", Path.Combine(demo, "study.json"), "--out", output);
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        var files = Directory.EnumerateFiles(output).Select(Path.GetFileName).Order().ToList();
        Assert.Equal(["report.html", "report.txt", "study.json"], files);
        foreach (var file in files)
        {
            var text = File.ReadAllText(Path.Combine(output, file!));
            Assert.Contains(Caution.LastSentence, text, StringComparison.Ordinal);
            ForbiddenWords.AssertNone(text, file!);
        }

        Assert.Contains("capitellum lies behind the line", File.ReadAllText(Path.Combine(output, "report.txt")).ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.EndsWith(Caution.Text, run.Output.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void TheReadersAnswer_ThatTheApWasExtendedAndSupinated_LetsItCarryTheCarryingAngle()
    {
        using var folder = new TemporaryFolder();
        var demo = Demo("adult-effusion");
        double? Angle(string answer)
        {
            var study = JsonNode.Parse(File.ReadAllText(Path.Combine(demo, "study.json")))!;
            study["walk"]!["decided"]!.AsArray().Single(d => d!["question"]!.GetValue<string>() == "views.ap-extended")!["choices"] = new JsonArray(answer);
            var file = folder.Write(answer + ".json", Encoding.UTF8.GetBytes(study.ToJsonString()));
            var run = CommandLine.Run("study", demo, "--landmarks", Path.Combine(demo, "landmarks.coco.json"), "--study", file, "--out", folder.File(answer));
            Assert.Equal(0, run.ExitCode);
            var films = JsonNode.Parse(File.ReadAllText(folder.File(answer, "study.json")))!["films"]!.AsArray();
            return films.SelectMany(f => f!["reading"]!["measurements"]!.AsArray()).Single(m => m!["name"]!.GetValue<string>() == "carrying-angle")!["value"]?.GetValue<double>();
        }

        Assert.Null(Angle("no"));
        Assert.InRange(Angle("yes")!.Value, -5, 25); // the elbow of the demo is drawn straight
    }

    [Fact]
    public void AContradictedSide_StopsTheReportUntilItIsSettled()
    {
        using var folder = new TemporaryFolder();
        var output = Path.Combine(folder.Path, "out");
        var demo = Demo("adult-effusion");
        string[] common = [demo, "--landmarks", Path.Combine(demo, "landmarks.coco.json"), "--out", output];
        var stopped = CommandLine.Run(["study", .. common, "--side", "left"]);
        Assert.Equal(3, stopped.ExitCode);
        Assert.Contains("contradicted", stopped.Error, StringComparison.Ordinal);
        Assert.Equal(["study.json"], Directory.EnumerateFiles(output).Select(Path.GetFileName));

        var settled = folder.Write("settled.json", Encoding.UTF8.GetBytes(
            """{"schema": "elbowassist/study/1", "settledSides": {"right-ap.png": "right", "right-lateral.png": "right"}}"""));
        Assert.Equal(0, CommandLine.Run(["study", .. common, "--side", "left", "--study", settled]).ExitCode);
        Assert.Contains("report.html", Directory.EnumerateFiles(output).Select(Path.GetFileName));
    }
}
