using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using ElbowAssist.Testing;

namespace ElbowAssist.EndToEnd;

public sealed class StoppedReadTests : IDisposable
{
    private const int Films = 40;
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void StoppedRun_KeepsWholeReadings_AndLeavesNothingHalfWritten()
    {
        for (var i = 0; i < Films; i++)
        {
            PlacedFilm.Film(folder, string.Create(CultureInfo.InvariantCulture, $"films/{i:00}.png"));
        }

        using var process = CommandLine.Start("read", folder.File("films"), "--out", folder.File("out"), "--view", "lateral");
        try
        {
            Assert.NotNull(process.StandardOutput.ReadLine());

            // Ctrl-C and this signal take the same way through the program; a background run ignores Ctrl-C.
            using var stop = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)]);
            stop.WaitForExit();
            Assert.True(process.WaitForExit(TimeSpan.FromSeconds(60)));
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill(entireProcessTree: true);
            }
        }

        Assert.Equal(1, process.ExitCode);
        Assert.Contains("Stopped", process.StandardError.ReadToEnd(), StringComparison.Ordinal);
        string[] written = [.. Directory.EnumerateFiles(folder.File("out")).Select(Path.GetFileName).OfType<string>()];
        string[] readings = [.. written.Where(w => w.EndsWith(".reading.json", StringComparison.Ordinal))];
        Assert.InRange(readings.Length, 1, Films - 1);
        Assert.DoesNotContain(written, w => w.EndsWith(".part", StringComparison.Ordinal));
        Assert.All(readings, r => JsonDocument.Parse(File.ReadAllBytes(folder.File("out", r))).Dispose());
        Assert.Equal(readings.Length, written.Count(w => w.EndsWith(".overlay.png", StringComparison.Ordinal)));
    }

    public void Dispose() => folder.Dispose();
}
