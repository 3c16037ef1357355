using System.Diagnostics;
using System.Text.RegularExpressions;

namespace ElbowAssist.EndToEnd;

/// <summary>
/// A process whose calls to the system are watched with strace(1): whom it calls over a network, and which files it opens to
/// write, makes or renames.
/// </summary>
internal sealed partial class Watched : IDisposable
{
    // The runtime names its threads and keeps machine code there, neither of which is a file.
    private static readonly string[] OwnPlaces = ["/proc/self/", "/dev/"];

    private readonly string log;

    private Watched(Process process, string log) => (Process, this.log) = (process, log);

    /// <summary>The process; the caller ends it.</summary>
    public Process Process { get; }

    /// <summary>Calls to or towards an address of a network, this machine's own among them.</summary>
    public IReadOnlyList<string> Calls => [.. Lines.Where(l => NetworkCall().IsMatch(l))];

    private IEnumerable<string> Lines => File.ReadLines(log);

    /// <summary>Starts the program, or another, with an empty folder as home.</summary>
    public static Watched Start(string home, IReadOnlyDictionary<string, string?> environment, string program, params string[] arguments)
    {
        Directory.CreateDirectory(home);
        var calls = home + ".strace";
        var start = new ProcessStartInfo("strace", [
            "-f", "--seccomp-bpf", "-qq", "-s", "4096", "-o", calls,
            "-e", "trace=connect,sendto,sendmsg,sendmmsg,openat,open,creat,mkdir,mkdirat,rename,renameat,renameat2,link,linkat,symlink", program, .. arguments])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["HOME"] = home;
        foreach (var name in start.Environment.Keys.Where(n => n.StartsWith("XDG_", StringComparison.Ordinal)).ToList())
        {
            start.Environment.Remove(name);
        }

        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        return new(Process.Start(start)!, calls);
    }

    /// <summary>What it wrote, made or renamed outside a folder and outside the places of the runtime.</summary>
    public IReadOnlyList<string> WrittenOutside(string folder) =>
    [
        .. from line in Lines
           where WritingCall().IsMatch(line)
           from Match path in QuotedPath().Matches(line)
           let name = path.Groups["path"].Value
           where !name.StartsWith(folder + "/", StringComparison.Ordinal) && name != folder && !OwnPlaces.Any(p => name.StartsWith(p, StringComparison.Ordinal))
           select name,
    ];

    /// <summary>Waits for the end, and gives the exit code of what was watched.</summary>
    public int Finish()
    {
        var output = Process.StandardOutput.ReadToEndAsync();
        var error = Process.StandardError.ReadToEndAsync();
        Assert.True(Process.WaitForExit(TimeSpan.FromMinutes(5)), "the program did not end");
        Task.WaitAll(output, error);
        return Process.ExitCode;
    }

    public void Dispose()
    {
        if (!Process.HasExited)
        {
            Process.Kill(entireProcessTree: true);
            Process.WaitForExit();
        }

        Process.Dispose();
    }

    [GeneratedRegex(@"^\d+\s+(connect|sendto|sendmsg|sendmmsg)\(.*sa_family=AF_INET6?\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NetworkCall();

    [GeneratedRegex(@"^\d+\s+((openat|open)\(.*O_(WRONLY|RDWR|CREAT)|creat\(|mkdir|rename|link|symlink)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex WritingCall();

    [GeneratedRegex("\"(?<path>([^\"\\\\]|\\\\.)*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex QuotedPath();
}

/// <summary>A test with strace; without it it says so.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class WatchedFactAttribute : FactAttribute
{
    public WatchedFactAttribute() => Skip = File.Exists("/usr/bin/strace") ? null : "Not installed: strace; tests/prepare installs it.";
}
