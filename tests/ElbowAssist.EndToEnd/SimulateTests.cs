using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

public sealed class SimulateTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Films_ComeWithSidecarTruthAndCoco_AndReadBackOnTheirTruth()
    {
        var run = CommandLine.Run("simulate", "--seed", "7", "--count", "1", "--out", folder.File("films"), "--ages", "30-40", "--injuries", "radial-head", "--adequacy", "good", "--size", "256");
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        Assert.Equal(
            ["7-ap.png", "7-ap.png.info.json", "7-ap.truth.json", "7-lateral.png", "7-lateral.png.info.json", "7-lateral.truth.json", "coco.json"],
            Directory.GetFiles(folder.File("films")).Select(Path.GetFileName).Order(StringComparer.Ordinal));

        var truth = TruthJson.Read(File.ReadAllBytes(folder.File("films", "7-lateral.truth.json")));
        Assert.Equal(7ul, truth.Simulated!.Seed);
        Assert.Equal(["radial-head"], truth.Simulated.Injuries);
        var coco = CocoKeypoints.Read(File.ReadAllBytes(folder.File("films", "coco.json")));
        var lateral = coco.Single(f => f.File == "7-lateral.png");
        foreach (var landmark in truth.Landmarks.Where(l => l.Position is not null))
        {
            Assert.Equal(0, landmark.Position!.Value.DistanceTo(lateral.Landmarks.Single(l => l.Name == landmark.Name).Position!.Value), 6);
        }

        var read = CommandLine.Run("read", folder.File("films"), "--landmarks", folder.File("films", "coco.json"), "--out", folder.File("out"));
        Assert.Equal(0, read.ExitCode);
        var measured = 0;
        foreach (var view in new[] { "lateral", "ap" })
        {
            var exact = TruthJson.Read(File.ReadAllBytes(folder.File("films", $"7-{view}.truth.json")));
            var reading = ReadingJson.Read(File.ReadAllBytes(folder.File("out", $"7-{view}.png.reading.json")));
            Assert.Equal(exact.Patient, reading.Patient);
            foreach (var m in reading.Measurements.Where(m => m.Value is not null))
            {
                var value = exact.Measurements.Single(t => t.Name == m.Name).Value!.Value;
                Assert.InRange(value, m.Redraw95!.Value.Low, m.Redraw95.Value.High);
                measured++;
            }
        }

        Assert.True(measured > 0, "No measurement was read on either film.");
    }

    [Fact]
    public void TheSameSeed_GivesTheSameBytes()
    {
        foreach (var output in new[] { "one", "two" })
        {
            Assert.Equal(0, CommandLine.Run("simulate", "--seed", "11", "--out", folder.File(output), "--view", "lateral", "--size", "128").ExitCode);
        }

        Assert.Equal(File.ReadAllBytes(folder.File("one", "11-lateral.png")), File.ReadAllBytes(folder.File("two", "11-lateral.png")));
        Assert.Equal(File.ReadAllBytes(folder.File("one", "11-lateral.truth.json")), File.ReadAllBytes(folder.File("two", "11-lateral.truth.json")));
    }

    [Theory]
    [InlineData("--ages", "12-2")]
    [InlineData("--view", "skyline")]
    [InlineData("--size", "10")]
    [InlineData("--count", "0")]
    [InlineData("--adequacy", "fine")]
    [InlineData("--injuries", "bruise")]
    [InlineData("--subject", "cat")]
    public void WrongOption_IsExplained(string option, string value)
    {
        var run = CommandLine.Run("simulate", "--seed", "1", "--out", folder.File("out"), option, value);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains(option, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void BonesFolder_WithoutItsFiles_OrOfAChild_IsExplained()
    {
        Directory.CreateDirectory(folder.File("bones"));
        var missing = CommandLine.Run("simulate", "--seed", "1", "--out", folder.File("out"), "--bones", folder.File("bones"));
        Assert.Equal(2, missing.ExitCode);
        Assert.Contains("bones.json", Assert.Single(missing.ErrorLines), StringComparison.Ordinal);

        File.WriteAllText(folder.File("bones", "bones.json"), """{"schema": "elbowassist/bones/1", "unit": "inch", "side": "right"}""");
        var unit = CommandLine.Run("simulate", "--seed", "1", "--out", folder.File("out"), "--bones", folder.File("bones"));
        Assert.Equal(2, unit.ExitCode);
        Assert.Contains("\"mm\"", Assert.Single(unit.ErrorLines), StringComparison.Ordinal);

        var child = CommandLine.Run("simulate", "--seed", "1", "--out", folder.File("out"), "--bones", folder.File("bones"), "--ages", "2-12");
        Assert.Equal(1, child.ExitCode);
        Assert.Contains("--ages", Assert.Single(child.ErrorLines), StringComparison.Ordinal);
        var broken = CommandLine.Run("simulate", "--seed", "1", "--out", folder.File("out"), "--bones", folder.File("bones"), "--injuries", "mixed");
        Assert.Equal(1, broken.ExitCode);
        Assert.Contains("--injuries", Assert.Single(broken.ErrorLines), StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    public void Dispose() => folder.Dispose();
}
