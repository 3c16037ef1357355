using System.Diagnostics;
using System.Globalization;

namespace ElbowAssist.Batch.Tests.Support;

/// <summary>The built program as a process.</summary>
internal static class Program
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(60);

    /// <summary>Starts it; the caller ends it.</summary>
    /// <param name="models">Folder of models, or null for those shipped.</param>
    /// <param name="environment">Further variables.</param>
    /// <param name="arguments">Arguments.</param>
    public static Process Start(string? models, IReadOnlyDictionary<string, string>? environment, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "elbowassist.dll"), .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        if (models is not null)
        {
            start.Environment["ELBOWASSIST_MODELS"] = models;
        }

        foreach (var (name, value) in environment ?? new Dictionary<string, string>(StringComparer.Ordinal))
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }

    /// <summary>
    /// Starts it where no file may grow beyond so many blocks of 512 bytes, which fails as a full disk does: a shell's limit
    /// that needs no rights (setrlimit(2), RLIMIT_FSIZE, its signal ignored).
    /// </summary>
    public static Process StartWithFileLimit(string models, int blocks, params string[] arguments)
    {
        var start = new ProcessStartInfo("bash", ["-c", FormattableString.Invariant($"trap '' XFSZ; ulimit -f {blocks}; exec dotnet \"$@\""), "bash", Path.Combine(AppContext.BaseDirectory, "elbowassist.dll"), .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["ELBOWASSIST_MODELS"] = models;
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0"; // the runtime's own mapped files would meet the limit first
        return Process.Start(start)!;
    }

    /// <summary>Runs it to its end.</summary>
    public static (int ExitCode, string Output, string Error) Run(string? models, params string[] arguments) => Finish(Start(models, null, arguments));

    /// <summary>Waits for its end.</summary>
    public static (int ExitCode, string Output, string Error) Finish(Process process)
    {
        using (process)
        {
            var output = process.StandardOutput.ReadToEndAsync();
            var error = process.StandardError.ReadToEndAsync();
            Assert.True(process.WaitForExit(Patience), "the program did not end");
            return (process.ExitCode, output.Result, error.Result);
        }
    }

    /// <summary>Sends a signal.</summary>
    public static void Signal(Process process, string signal)
    {
        using var kill = Process.Start("kill", [signal, process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }
}
