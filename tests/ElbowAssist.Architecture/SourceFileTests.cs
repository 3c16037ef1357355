namespace ElbowAssist.Architecture;

/// <summary>Source files keep to one idea each, and to the names of the field.</summary>
public sealed class SourceFileTests
{
    private const int MostLines = 400;

    // Names that say nothing of what a type is for.
    private static readonly string[] EmptyNames = ["Manager", "Helper", "Helpers", "Utils", "Utilities", "Util", "Common", "Misc"];

    [Fact]
    public void EverySourceFile_HasAtMost400Lines() =>
        Assert.All(SourceFiles(), f => Assert.True(File.ReadLines(f).Count() <= MostLines, $"{f} has more than {MostLines} lines."));

    [Fact]
    public void NoSourceFile_IsNamedAfterNothing() =>
        Assert.All(SourceFiles(), f =>
        {
            var name = Path.GetFileNameWithoutExtension(f);
            Assert.False(EmptyNames.Any(e => name.EndsWith(e, StringComparison.Ordinal)), $"{f} has a name that says nothing.");
        });

    [Fact]
    public void EveryNamespace_FollowsItsFolder()
    {
        foreach (var file in SourceFiles().Where(f => f.Contains("/src/", StringComparison.Ordinal)))
        {
            var declared = File.ReadLines(file).FirstOrDefault(l => l.StartsWith("namespace ", StringComparison.Ordinal));
            var project = file.Split("/src/")[1].Split('/')[0];
            Assert.True(declared is null || declared.StartsWith($"namespace {project}", StringComparison.Ordinal), $"{file} lies outside its project's namespace.");
        }
    }

    [Theory]
    [InlineData("tools/elbowassist")]
    [InlineData("tools/test")]
    [InlineData(".ci/run")]
    public void EntryScript_CanBeRun(string path) =>
        Assert.True(
            OperatingSystem.IsWindows() || File.GetUnixFileMode(Path.Combine(Checkout.Root, path)).HasFlag(UnixFileMode.UserExecute),
            $"{path} has no run bit.");

    private static IEnumerable<string> SourceFiles() =>
        new[] { "src", "tests" }.SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Checkout.Root, folder), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal));
}
