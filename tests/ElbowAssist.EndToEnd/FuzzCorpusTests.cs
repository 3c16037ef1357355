using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

/// <summary>Inputs that fuzzing starts from, and every find once mended, are read or turned away in a sentence.</summary>
public sealed class FuzzCorpusTests
{
    [Fact]
    public void EveryInputOfTheCorpus_IsReadOrTurnedAway()
    {
        var run = CommandLine.RunProgram("elbowassist-fuzz.dll", "replay", Path.Combine(Repository.Root, "tools", "fuzzing", "corpus"));
        Assert.True(run.ExitCode == 0, run.Output + run.Error);
        Assert.EndsWith(" inputs, 0 finds", run.OutputLines[^1].TrimEnd(), StringComparison.Ordinal);
    }
}
