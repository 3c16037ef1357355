using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

/// <summary>A full disk is told in one sentence with exit code 1, and leaves nothing half written.</summary>
public sealed class FullDiskTests : IDisposable
{
    private const int Room = 4096;
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Read_SaysSo_AndLeavesNothing() => AssertTold(
        CommandLine.RunOnFullDisk(Room, "read", PlacedFilm.Film(folder), "--landmarks", PlacedFilm.Landmarks(folder), "--out", folder.File("out")));

    [Fact]
    public void Simulate_SaysSo_AndLeavesNothing() => AssertTold(
        CommandLine.RunOnFullDisk(Room, "simulate", "--seed", "1", "--count", "1", "--view", "lateral", "--size", "128", "--out", folder.File("out")));

    [Fact]
    public void OtherPictures_SaySo_AndLeaveNothing() => AssertTold(
        CommandLine.RunOnFullDisk(Room, "simulate", "--seed", "1", "--count", "1", "--subject", "not-radiograph", "--size", "512", "--out", folder.File("out")));

    [Fact]
    public void Bench_SaysSo_AndKeepsNoReport()
    {
        var labels = folder.Write("set/coco.json", Encoding.UTF8.GetBytes("""
            {"images": [{"id": 1, "file_name": "a.png", "width": 800, "height": 1000}],
             "categories": [{"id": 1, "name": "elbow", "keypoints": ["humerus.fossa.roof", "humerus.waist"]}],
             "annotations": [{"id": 1, "image_id": 1, "category_id": 1, "keypoints": [10, 20, 2, 30, 40, 2]}]}
            """));
        PlacedFilm.Film(folder, "set/a.png");
        var run = CommandLine.RunOnFullDisk(Room, "bench", labels, "--predictions", labels, "--out", folder.File("out"));
        AssertSaid(run);
        Assert.DoesNotContain(Directory.EnumerateFiles(folder.File("out"), "*", SearchOption.AllDirectories), f =>
            Path.GetFileName(f) != "run.json"); // what the run rests on was written whole before
    }

    [Fact]
    public async Task Store_SaysSo_AndGoesOnOnceThereIsRoom()
    {
        var store = folder.File("studies.db");
        var film = SampleFilm.Png();
        using (var service = await Service.StartAsync(CommandLine.StartOnFullDisk(film.Length / 2, "serve", "--port", "0", "--store", store)))
        {
            var id = await service.BeginAsync();
            using var answer = await service.Client.PostAsync(new Uri($"/api/studies/{id}/films?name=a.png", UriKind.Relative), new ByteArrayContent(film));
            Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
            Assert.Contains("check that the disk has room", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            Assert.DoesNotContain("a.png", await service.Client.GetStringAsync(new Uri($"/api/studies/{id}", UriKind.Relative)), StringComparison.Ordinal);
        }

        using (var service = await Service.StartAsync(CommandLine.Start("serve", "--port", "0", "--store", store)))
        {
            var studies = await service.Client.GetStringAsync(new Uri("/api/studies", UriKind.Relative));
            Assert.Contains("\"films\":0", studies, StringComparison.Ordinal);
        }
    }

    public void Dispose() => folder.Dispose();

    private void AssertTold(RunResult run)
    {
        AssertSaid(run);
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.File("out")));
    }

    private static void AssertSaid(RunResult run)
    {
        Assert.True(run.ExitCode == 1, run.Output + run.Error);
        Assert.Contains("cannot be written; check that there is room", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    /// <summary>The service as a process; what disposes of it ends it.</summary>
    private sealed record Service(Process Process, HttpClient Client) : IDisposable
    {
        public static async Task<Service> StartAsync(Process process)
        {
            var line = await process.StandardOutput.ReadLineAsync();
            return new(process, new HttpClient { BaseAddress = new Uri(line!.Split(' ')[^1]) });
        }

        public async Task<string> BeginAsync()
        {
            using var answer = await Client.PostAsync(new Uri("/api/studies", UriKind.Relative), new StringContent("{}", Encoding.UTF8, "application/json"));
            return answer.Headers.Location!.ToString().Split('/')[^1];
        }

        public void Dispose()
        {
            Client.Dispose();
            using (var stop = Process.Start("kill", ["-TERM", Process.Id.ToString(CultureInfo.InvariantCulture)]))
            {
                stop.WaitForExit();
            }

            if (!Process.WaitForExit(TimeSpan.FromSeconds(60)))
            {
                Process.Kill(entireProcessTree: true);
            }

            Process.Dispose();
        }
    }
}
