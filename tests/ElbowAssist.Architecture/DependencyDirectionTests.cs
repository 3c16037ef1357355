using System.Xml.Linq;

namespace ElbowAssist.Architecture;

/// <summary>References between source projects point one way, as the project's guide draws them.</summary>
public sealed class DependencyDirectionTests
{
    private static readonly Dictionary<string, string[]> Allowed = new(StringComparer.Ordinal)
    {
        ["Geometry"] = [],
        ["Anatomy"] = ["Geometry"],
        ["Reading"] = ["Anatomy"],
        ["Imaging"] = ["Geometry"],
        ["Models"] = ["Anatomy"],
        ["Pipeline"] = ["Reading", "Imaging", "Models"],
        ["Drawing"] = ["Reading"],
        ["Exchange"] = ["Reading"],
        ["Batch"] = ["Exchange"],
        ["Phantom"] = ["Anatomy"],
        ["Phantom.Gpu"] = ["Phantom"],
        ["Bench"] = ["Pipeline", "Exchange"],
        ["Store"] = ["Reading"],
    };

    private static readonly HashSet<string> FreeOfNativeLibraries = new(StringComparer.Ordinal)
    {
        "Geometry", "Anatomy", "Reading", "Exchange", "Batch", "Phantom",
    };

    [Fact]
    public void EverySourceProject_ReferencesOnlyWhatItMay()
    {
        foreach (var (name, project) in SourceProjects().Where(p => Allowed.ContainsKey(p.Name)))
        {
            var references = project.Descendants("ProjectReference")
                .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/')))
                .Select(r => r["ElbowAssist.".Length..]);
            Assert.All(references, r => Assert.True(Allowed[name].Contains(r), $"{name} must not reference {r}."));
        }
    }

    [Fact]
    public void PureProjects_ReferenceNoNativePackage()
    {
        foreach (var (name, project) in SourceProjects().Where(p => FreeOfNativeLibraries.Contains(p.Name)))
        {
            var packages = project.Descendants("PackageReference").Select(r => r.Attribute("Include")!.Value).ToList();
            Assert.All(packages, p => Assert.False(
                p.StartsWith("OpenCvSharp", StringComparison.Ordinal) ||
                p.StartsWith("Microsoft.ML", StringComparison.Ordinal) ||
                p.StartsWith("SkiaSharp", StringComparison.Ordinal),
                $"{name} references {p}."));
        }
    }

    [Fact]
    public void EverySourceProject_IsNamedInTheDrawing()
    {
        var known = Allowed.Keys.Concat(["Cli", "Web"]).ToHashSet(StringComparer.Ordinal);
        Assert.All(SourceProjects(), p => Assert.Contains(p.Name, known));
    }

    private static IEnumerable<(string Name, XDocument Project)> SourceProjects() =>
        Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src"), "*.csproj", SearchOption.AllDirectories)
            .Select(path => (Path.GetFileNameWithoutExtension(path)["ElbowAssist.".Length..], XDocument.Load(path)));
}
