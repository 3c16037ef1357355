using System.Diagnostics;
using System.Text.Json;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Testing;

namespace ElbowAssist.Browser.Page;

/// <summary>The built program serving its page as a process of its own, and a reader in Chromium.</summary>
public sealed class ServedPage : IDisposable
{
    private static readonly string Scripts = Path.Combine(Repository.Root, "tests", "ElbowAssist.Browser", "Page");

    private readonly Lock gate = new();
    private readonly TemporaryFolder folder = new();
    private readonly string[] more;
    private Process? program;
    private string? address;

    /// <summary>The program as it runs without further options.</summary>
    public ServedPage()
        : this([])
    {
    }

    private ServedPage(string[] more) => this.more = more;

    /// <summary>The program with further options.</summary>
    public static ServedPage With(params string[] options) => new(options);

    /// <summary>Folder with the screenshots of this run; ELBOWASSIST_SCREENSHOTS names one that stays.</summary>
    public string Screenshots { get; private set; } = "";

    /// <summary>Does something at the page and tells what was seen.</summary>
    public JsonElement Act(string act, params string[] more)
    {
        lock (gate)
        {
            Start();
        }

        return JsonDocument.Parse(Tool.Run("node", [Path.Combine(Scripts, "acts.mjs"), act, address!, Screenshots, .. more])).RootElement;
    }

    /// <summary>A file for the reader to drop.</summary>
    public string Write(string name, byte[] content) => folder.Write(name, content);

    public void Dispose()
    {
        program?.Kill(entireProcessTree: true);
        program?.Dispose();
        folder.Dispose();
    }

    private void Start()
    {
        if (program is not null)
        {
            return;
        }

        Screenshots = Environment.GetEnvironmentVariable("ELBOWASSIST_SCREENSHOTS") is { Length: > 0 } named ? named : folder.File("screenshots");
        Directory.CreateDirectory(Screenshots);
        if (!Directory.Exists(Path.Combine(Scripts, "node_modules", "axe-core")))
        {
            Tool.Run("npm", "ci", "--prefix", Scripts, "--silent");
        }

        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true };
        foreach (var argument in new[] { Path.Combine(AppContext.BaseDirectory, "elbowassist.dll"), "serve", "--port", "0", "--store", folder.File("studies.db") }.Concat(more))
        {
            start.ArgumentList.Add(argument);
        }

        program = Process.Start(start)!;
        const string Before = "The reading page is at ";
        var line = program.StandardOutput.ReadLine() ?? "";
        address = line.StartsWith(Before, StringComparison.Ordinal) ? line[Before.Length..] : throw new InvalidOperationException($"The program said: {line}");
    }
}
