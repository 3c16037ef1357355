using ElbowAssist.Exchange.Json;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

/// <summary>Pictures without an elbow are simulated, read and counted by three commands.</summary>
public sealed class OtherPictureTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Theory]
    [InlineData("near-miss")]
    [InlineData("not-radiograph")]
    public void Pictures_AreRefused_AndCountedAlikeFromReadingsAndProposals(string subject)
    {
        var run = CommandLine.Run("simulate", "--seed", "3", "--count", "2", "--out", folder.File("films"), "--subject", subject, "--size", "192");
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        var truths = Directory.GetFiles(folder.File("films"), "*.truth.json").Select(f => TruthJson.Read(File.ReadAllBytes(f))).ToList();
        Assert.Equal(4, truths.Count);
        Assert.All(truths, t => Assert.True(File.Exists(folder.File("films", t.Image.File))));
        Assert.Equal(["as-taken", "turned-mirrored-inverted"], truths.Select(t => t.NotElbow!.Version).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));

        Assert.Equal(3, CommandLine.Run("read", folder.File("films"), "--only", "reading", "--out", folder.File("readings")).ExitCode);
        Assert.Equal(0, CommandLine.Run("read", folder.File("films"), "--only", "proposals", "--out", folder.File("proposals")).ExitCode);
        foreach (var read in new[] { "readings", "proposals" })
        {
            var bench = CommandLine.Run("bench", folder.File("films"), "--not-elbows", folder.File(read), "--tables", folder.File("tables"));
            Assert.Equal("", bench.Error);
            Assert.Equal("4 pictures without an elbow: 4 refused, 0 taken for an elbow, 0 measured.", bench.OutputLines[^1]);
            Assert.StartsWith("all,4,4,0,0,0,", File.ReadAllLines(folder.File("tables", "not-elbows.csv"))[1], StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("--view", "lateral")]
    [InlineData("--ages", "2-12")]
    [InlineData("--injuries", "none")]
    public void WhatIsSaidOfElbows_IsNotTakenForOthers(string option, string value)
    {
        var run = CommandLine.Run("simulate", "--seed", "1", "--out", folder.File("out"), "--subject", "near-miss", option, value);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains(option, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void Bench_WithoutAnythingToScore_SaysWhatIsMissing()
    {
        var run = CommandLine.Run("bench");
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("labelled films", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        var empty = CommandLine.Run("bench", "--not-elbows", folder.Path);
        Assert.Equal(1, empty.ExitCode);
        Assert.Contains("holds no readings", Assert.Single(empty.ErrorLines), StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();
}
