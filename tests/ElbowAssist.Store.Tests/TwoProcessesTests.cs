using System.Diagnostics;
using System.Globalization;
using ElbowAssist.Store.Entries;
using ElbowAssist.Testing;

namespace ElbowAssist.Store.Tests;

/// <summary>Two processes on one store: each entry has its own number, none is lost, and those written together stay together.</summary>
public sealed class TwoProcessesTests
{
    private const int Lines = 25;

    [Fact]
    public async Task TwoWriters_LoseNothing_AndNeverShareANumber()
    {
        using var folder = new TemporaryFolder();
        var path = folder.File("studies.db");
        string study;
        using (var store = StudyStore.Open(path))
        {
            study = store.Create("title", "films").Id;
        }

        var acknowledged = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => Task.Run(() => WriteAndKill(path, study))));
        Assert.All(acknowledged, a => Assert.True(a.Count >= Lines));
        Assert.Empty(acknowledged[0].Intersect(acknowledged[1]));
        using var opened = StudyStore.Open(path);
        var entries = opened.Entries(study);
        Assert.Superset(acknowledged.SelectMany(a => a).ToHashSet(), entries.Select(e => e.Number).ToHashSet());
        Assert.Equal(entries.Count, entries.Select(e => e.Number).Distinct().Count());
        Assert.Equal(entries.Count(e => e.Event is Answered), entries.Count(e => e.Event is PromptDealtWith));
    }

    private static List<long> WriteAndKill(string path, string study)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "ElbowAssist.Store.CrashWriter.dll"), path, study])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        using var writer = Process.Start(start)!;
        var numbers = new List<long>();
        while (writer.StandardOutput.ReadLine() is { } line)
        {
            if (long.TryParse(line, CultureInfo.InvariantCulture, out var number))
            {
                numbers.Add(number);
            }

            if (numbers.Count == Lines)
            {
                writer.Kill();
            }
        }

        writer.WaitForExit();
        return numbers;
    }
}
