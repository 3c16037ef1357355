using System.Diagnostics;

namespace ElbowAssist.Exchange.Tests.Dicom.Support;

/// <summary>Programs outside the project, from Debian: see tests/prepare.</summary>
internal static class Tool
{
    /// <summary>Runs a program to its end and gives its exit code with everything it wrote.</summary>
    public static (int ExitCode, string Output) Try(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(Find(program)!)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + error.Result);
    }

    /// <summary>Runs a program that must end with exit code 0.</summary>
    public static string Run(string program, params string[] arguments)
    {
        var (exitCode, output) = Try(program, arguments);
        Assert.True(exitCode == 0, $"{program} ended with {exitCode}: {output}");
        return output;
    }

    /// <summary>Path of a program, or null if it is not installed.</summary>
    public static string? Find(string program) =>
        new[] { "/usr/bin", "/usr/sbin", "/usr/local/bin" }
            .Select(folder => Path.Combine(folder, program))
            .FirstOrDefault(File.Exists);
}

/// <summary>A test against programs outside the project; without them it says so, except in continuous integration.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ToolFactAttribute : FactAttribute
{
    public ToolFactAttribute(params string[] programs) => Skip = ToolSkip.Reason(programs);
}

/// <summary>A theory against programs outside the project.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class ToolTheoryAttribute : TheoryAttribute
{
    public ToolTheoryAttribute(params string[] programs) => Skip = ToolSkip.Reason(programs);
}

internal static class ToolSkip
{
    public static string? Reason(string[] programs)
    {
        var missing = programs.Where(p => Tool.Find(p) is null).ToList();
        return missing.Count == 0 || Environment.GetEnvironmentVariable("CI") == "true"
            ? null
            : $"Not installed: {string.Join(", ", missing)}; tests/prepare installs it.";
    }
}
