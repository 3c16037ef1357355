using System.Diagnostics;
using System.Globalization;

namespace ElbowAssist.EndToEnd;

/// <summary>What a run of the program left.</summary>
/// <param name="ExitCode">Exit code.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Error">Standard error.</param>
internal sealed record RunResult(int ExitCode, string Output, string Error)
{
    public IReadOnlyList<string> OutputLines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    public IReadOnlyList<string> ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>Runs the built program as a user would, as a process of its own.</summary>
internal static class CommandLine
{
    private const string Program = "elbowassist.dll";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    public static RunResult Run(params string[] arguments) => Finish(Start(arguments), arguments);

    /// <summary>Runs another built program beside the tests.</summary>
    public static RunResult RunProgram(string program, params string[] arguments) =>
        Finish(Process.Start(StartOf(program, arguments))!, arguments);

    /// <summary>Runs with so much room for managed memory and no more.</summary>
    public static RunResult RunWithHeapLimit(long bytes, params string[] arguments)
    {
        var start = StartOf(Program, arguments);
        start.Environment["DOTNET_GCHeapHardLimit"] = string.Create(CultureInfo.InvariantCulture, $"0x{bytes:X}");
        return Finish(Process.Start(start)!, arguments);
    }

    /// <summary>Runs where no file may grow beyond so many bytes, as on a disk that is full.</summary>
    public static RunResult RunOnFullDisk(int bytes, params string[] arguments) => Finish(StartOnFullDisk(bytes, arguments), arguments);

    /// <summary>Starts there: a shell's limit that needs no rights (setrlimit(2), RLIMIT_FSIZE, its signal ignored).</summary>
    public static Process StartOnFullDisk(int bytes, params string[] arguments)
    {
        var plain = StartOf(Program, arguments);
        var start = StartOf(Program, arguments);
        start.FileName = "bash";
        start.ArgumentList.Clear();
        foreach (var argument in (string[])["-c", FormattableString.Invariant($"trap '' XFSZ; ulimit -f {bytes / 512}; exec dotnet \"$@\""), "bash", .. plain.ArgumentList])
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["DOTNET_EnableWriteXorExecute"] = "0"; // the runtime's own mapped files would meet the limit first
        return Process.Start(start)!;
    }

    /// <summary>Starts the program; the caller ends it.</summary>
    public static Process Start(params string[] arguments) => Process.Start(StartOf(Program, arguments))!;

    private static ProcessStartInfo StartOf(string program, string[] arguments) =>
        new("dotnet", [Path.Combine(AppContext.BaseDirectory, program), .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };

    private static RunResult Finish(Process started, string[] arguments)
    {
        using var process = started;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"The program run with {string.Join(' ', arguments)} did not end.");
        }

        return new RunResult(process.ExitCode, output.Result, error.Result);
    }
}
