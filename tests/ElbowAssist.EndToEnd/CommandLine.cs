using System.Diagnostics;

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
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    public static RunResult Run(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "elbowassist.dll"));
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"elbowassist {string.Join(' ', arguments)} did not end.");
        }

        return new RunResult(process.ExitCode, output.Result, error.Result);
    }
}
