using System.Net;
using System.Net.Sockets;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

/// <summary>
/// Nothing leaves the machine, and nothing is left on it besides what was asked for: not by the program, not by the runtimes
/// it carries. What the system was asked to do is looked at, so it does not matter who asked.
/// </summary>
public sealed class NothingLeavesTests : IDisposable
{
    private static readonly Dictionary<string, string?> Plain = new(StringComparer.Ordinal) { ["OTEL_EXPORTER_OTLP_ENDPOINT"] = null };
    private readonly TemporaryFolder folder = new();

    [WatchedFact]
    public void Read_CallsNobody_AndWritesItsOutputsOnly()
    {
        var film = PlacedFilm.Film(folder);
        using var run = Start("read", film, "--view", "lateral", "--out", folder.File("out"));
        Assert.Contains(run.Finish(), new[] { 0, 3 });
        Assert.NotEmpty(Directory.EnumerateFiles(folder.File("out")));
        Assert.Empty(run.Calls);
        Assert.Empty(run.WrittenOutside(folder.File("out")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.File("home")));
    }

    [WatchedFact]
    public void Batch_CallsNobody_AndWritesItsResultsOnly()
    {
        PlacedFilm.Film(folder, "films/film.png");
        using var run = Start("batch", folder.File("films"), "--out", folder.File("out", "results.jsonl"));
        Assert.Contains(run.Finish(), new[] { 0, 3 });
        Assert.Single(File.ReadLines(folder.File("out", "results.jsonl")));
        Assert.Empty(run.Calls);
        Assert.Empty(run.WrittenOutside(folder.File("out")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.File("home")));
    }

    [WatchedFact]
    public async Task Serve_CallsNobody_AndWritesItsStoreOnly()
    {
        using var run = Start("serve", "--port", "0", "--store", folder.File("out", "studies.db"));
        var line = await run.Process.StandardOutput.ReadLineAsync();
        using var client = new HttpClient { BaseAddress = new Uri(line!.Split(' ')[^1]), Timeout = TimeSpan.FromMinutes(2) };
        using var answer = await client.PostAsync(new Uri("/api/readings?view=lateral", UriKind.Relative), new ByteArrayContent(SampleFilm.Png()));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var stop = System.Diagnostics.Process.Start("pkill", ["-TERM", "-P", FormattableString.Invariant($"{run.Process.Id}")]);
        await stop.WaitForExitAsync();
        run.Finish();
        Assert.True(File.Exists(folder.File("out", "studies.db")));
        Assert.Empty(run.Calls);
        Assert.Empty(run.WrittenOutside(folder.File("out")));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.File("home")));
    }

    /// <summary>That a call would have been seen: here the user asks for one, of an archive that is not there.</summary>
    [WatchedFact]
    public void CallThatIsAskedFor_IsSeen()
    {
        var port = FreePort();
        using var run = Start("batch", FormattableString.Invariant($"http://127.0.0.1:{port}/"), "--out", folder.File("results.jsonl"));
        Assert.NotEqual(0, run.Finish());
        Assert.Contains(run.Calls, c => c.Contains(FormattableString.Invariant($"htons({port})"), StringComparison.Ordinal));
    }

    /// <summary>That a file elsewhere would have been seen.</summary>
    [WatchedFact]
    public void FileElsewhere_IsSeen()
    {
        var elsewhere = folder.File("home", "device-id");
        using var run = Watched.Start(folder.File("home"), Plain, "bash", "-c", "echo 1 >\"$0\"", elsewhere);
        Assert.Equal(0, run.Finish());
        Assert.Equal([elsewhere], run.WrittenOutside(folder.File("out")));
    }

    public void Dispose() => folder.Dispose();

    private Watched Start(params string[] arguments)
    {
        // The folder of the outputs may be made; it is where they are asked for.
        Directory.CreateDirectory(folder.File("out"));
        return Watched.Start(folder.File("home"), Plain, "dotnet", [Path.Combine(AppContext.BaseDirectory, "elbowassist.dll"), .. arguments]);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
