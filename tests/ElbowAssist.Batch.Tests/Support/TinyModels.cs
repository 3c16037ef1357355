using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests.Support;

/// <summary>Networks of known answers in place of the real ones: a film takes milliseconds.</summary>
internal static class TinyModels
{
    public static string Write(TemporaryFolder folder)
    {
        using var own = new TemporaryFolder();
        ModelFolders.View(own);
        ModelFolders.LateralLayout(own);
        foreach (var file in Directory.EnumerateFiles(own.Path, "*", SearchOption.AllDirectories))
        {
            folder.Write(Path.Combine("models", Path.GetRelativePath(own.Path, file)), File.ReadAllBytes(file));
        }

        return folder.File("models");
    }

    /// <summary>The lines of a results file in the order of their films; each film must stand there once.</summary>
    public static IReadOnlyList<string> LinesOf(string results)
    {
        var lines = File.ReadAllLines(results).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(lines.Count, lines.Distinct(StringComparer.Ordinal).Count());
        return lines;
    }
}
