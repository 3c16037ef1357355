using System.Diagnostics;
using System.Globalization;
using ElbowAssist.Store.Entries;
using ElbowAssist.Testing;

namespace ElbowAssist.Store.Tests;

/// <summary>A writer killed in the middle of its work loses nothing it has acknowledged.</summary>
public sealed class CrashTests
{
    private const string Variable = "ELBOWASSIST_CRASHES";

    /// <summary>Ten times here; ELBOWASSIST_CRASHES names another number.</summary>
    [Fact]
    public void AfterEveryKill_TheStoreOpens_AndHoldsEverythingAcknowledged()
    {
        var times = Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } text ? int.Parse(text, CultureInfo.InvariantCulture) : 10;
        using var folder = new TemporaryFolder();
        var path = folder.File("studies.db");
        string study;
        using (var store = StudyStore.Open(path))
        {
            study = store.Create("title", "films").Id;
        }

        var random = new Random(7);
        long before = 0;
        for (var i = 0; i < times; i++)
        {
            var acknowledged = WriteAndKill(path, study, random.Next(1, 40));
            Assert.True(acknowledged > before, "the writer must have written");
            using var store = StudyStore.Open(path);
            var entries = store.Entries(study);
            Assert.True(entries[^1].Number >= acknowledged, FormattableString.Invariant($"kill {i}: {acknowledged} was acknowledged, {entries[^1].Number} is the last kept"));
            // Entries written together are there together.
            Assert.Equal(entries.Count(e => e.Event is Answered), entries.Count(e => e.Event is PromptDealtWith));
            Assert.All(store.Find(study)!.Films, f => Assert.Equal(16, store.Content(study, f.Id)!.Length));
            before = entries[^1].Number;
        }
    }

    private static long WriteAndKill(string path, string study, int lines)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, UseShellExecute = false };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "ElbowAssist.Store.CrashWriter.dll"));
        start.ArgumentList.Add(path);
        start.ArgumentList.Add(study);
        using var writer = Process.Start(start)!;
        long last = 0;
        for (var i = 0; i < lines && writer.StandardOutput.ReadLine() is { } line; i++)
        {
            last = long.Parse(line, CultureInfo.InvariantCulture);
        }

        // On Linux this is SIGKILL. Whatever was acknowledged until it took effect counts, too.
        writer.Kill();
        while (writer.StandardOutput.ReadLine() is { } line)
        {
            last = long.TryParse(line, CultureInfo.InvariantCulture, out var number) ? number : last;
        }

        writer.WaitForExit();
        return last;
    }
}
