using System.Diagnostics;
using System.IO.Compression;
using System.Xml.Linq;

namespace ElbowAssist.Architecture;

/// <summary>What a developer gets with a package: the library, its documentation, symbols, licence, guide and schemas.</summary>
public sealed class PackageTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("elbowassist-packages-");

    [Theory]
    [InlineData("ElbowAssist.Exchange", "schemas/reading-1.schema.json,schemas/study-1.schema.json,schemas/truth-1.schema.json,schemas/sidecar-1.schema.json")]
    [InlineData("ElbowAssist.Models", "schemas/model.schema.json")]
    [InlineData("ElbowAssist.Drawing", "fonts/LICENSE-DejaVu.txt")]
    public void Package_CarriesWhatItsUserNeeds(string library, string further)
    {
        Pack(library);

        using var package = Open($"{library}.*.nupkg");
        var names = package.Entries.Select(e => e.FullName).ToList();
        Assert.All(
            [$"lib/net10.0/{library}.dll", $"lib/net10.0/{library}.xml", "README.md", .. further.Split(',')],
            needed => Assert.Contains(needed, names));
        using var nuspec = package.GetEntry(library + ".nuspec")!.Open();
        var metadata = XDocument.Load(nuspec).Root!.Elements().First().Elements().ToLookup(e => e.Name.LocalName);
        Assert.Equal("Apache-2.0", metadata["license"].Single().Value);
        Assert.Equal("README.md", metadata["readme"].Single().Value);
        Assert.DoesNotContain(metadata["dependencies"].Single().Descendants(), d => d.Attribute("id")?.Value.Contains("Analyzer", StringComparison.Ordinal) == true);
        using var symbols = Open($"{library}.*.snupkg");
        Assert.Contains(symbols.Entries, e => e.FullName == $"lib/net10.0/{library}.pdb");
    }

    [Fact]
    public void PublicMembers_AreNamedInFiles()
    {
        var files = Directory.GetFiles(Path.Combine(Checkout.Root, "src"), "PublicAPI.Unshipped.txt", SearchOption.AllDirectories);
        Assert.True(files.Length >= 10);
        Assert.All(files, f => Assert.True(File.ReadLines(f).Count() > 1, $"{f} names no public member; run tools/packaging/api."));
    }

    public void Dispose() => folder.Delete(recursive: true);

    private ZipArchive Open(string pattern) => ZipFile.OpenRead(folder.GetFiles(pattern).Single().FullName);

    private void Pack(string library)
    {
        var configuration = AppContext.BaseDirectory.Contains("release", StringComparison.OrdinalIgnoreCase) ? "Release" : "Debug";
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, WorkingDirectory = Checkout.Root };
        foreach (var argument in new[] { "pack", Path.Combine("src", library), "--configuration", configuration, "--no-build", "--output", folder.FullName })
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, output);
    }
}
