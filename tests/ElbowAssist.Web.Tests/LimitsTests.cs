using System.Text.Json;
using ElbowAssist.Cli.Serving;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Store;
using ElbowAssist.Testing;
using ElbowAssist.Web;

namespace ElbowAssist.Web.Tests;

public sealed class LimitsTests
{
    [Theory]
    [InlineData(1, false)]
    [InlineData(1_000_000, true)]
    public async Task Service_GoesByTheLimitsItIsGiven(double fewestPixelsAcrossTheShaft, bool isTooCoarse)
    {
        using var folder = new TemporaryFolder();
        using var store = StudyStore.Open(folder.File("studies.db"));
        using var desk = new FilmDesk(null, AdequacyLimits.Default.With(
            new Dictionary<string, (double, string)>(StringComparer.Ordinal) { ["shaft.width-pixels"] = (fewestPixelsAcrossTheShaft, "for this test") }));
        await using var app = ElbowService.Create(new ServiceOptions { Port = 0 }, desk, store);
        await app.StartAsync();
        using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
        using var coco = new ByteArrayContent(await File.ReadAllBytesAsync(Path.Combine(RunningService.Demos, "adult-effusion", "landmarks.coco.json")));
        using var response = await client.PostAsync("/api/measurements?name=right-lateral.png&width=800&height=1200&ageMonths=492&side=right", coco);
        var reading = JsonDocument.Parse(await response.Content.ReadAsStringAsync()).RootElement;
        var line = reading.GetProperty("measurements").EnumerateArray().First(m => m.GetProperty("name").GetString() == "anterior-humeral-line.position");
        Assert.Equal(isTooCoarse, line.GetProperty("state").GetString() == "withheld");
        Assert.Equal(isTooCoarse, line.GetProperty("reasons").EnumerateArray().Any(r => r.GetString() == "resolution-low"));
    }
}
