using System.Text.Json;

namespace ElbowAssist.Architecture;

/// <summary>The notice file names everything the program ships, in the version it ships.</summary>
public sealed class NoticeTests
{
    // Their assets are for the build alone.
    private static readonly string[] BuildOnly = ["Meziantou.Analyzer", "Microsoft.CodeAnalysis.PublicApiAnalyzers"];

    private static readonly string Program = Path.Combine(Checkout.Root, "src", "ElbowAssist.Cli");

    [Fact]
    public void EveryPackageOfTheLockFile_StandsThereWithItsLicence()
    {
        var sections = File.ReadAllText(Path.Combine(Program, "THIRD-PARTY-NOTICES.txt")).Split(new string('=', 80))
            .Select(s => s.Trim()).ToDictionary(s => s.Split('\n')[0], StringComparer.Ordinal);
        using var lockFile = JsonDocument.Parse(File.ReadAllText(Path.Combine(Program, "packages.lock.json")));
        var shipped = lockFile.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(f => f.Value.EnumerateObject())
            .Where(p => p.Value.GetProperty("type").GetString() != "Project" && !BuildOnly.Contains(p.Name, StringComparer.Ordinal))
            .Select(p => $"{p.Name} {p.Value.GetProperty("resolved").GetString()}").Distinct(StringComparer.Ordinal).ToList();
        Assert.True(shipped.Count > 20);
        Assert.All(shipped, p => Assert.True(sections.ContainsKey(p), $"{p} is not in THIRD-PARTY-NOTICES.txt; run tools/packaging/notices."));
        Assert.All(shipped, p => Assert.DoesNotContain("Licence: not stated", sections[p], StringComparison.Ordinal));
        Assert.Equal(shipped.Count + 2, sections.Count); // the head, and what lies beside and inside the packages
    }
}
