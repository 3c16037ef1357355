using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json;
using ElbowAssist.Testing;

namespace ElbowAssist.Web.Tests;

/// <summary>Several films of one patient for another program.</summary>
public sealed class StudyReadingTests(RunningService service) : IClassFixture<RunningService>
{
    private static readonly string Demo = Path.Combine(RunningService.Demos, "adult-two-views");

    [Fact]
    public async Task AStudy_ComesBackWhole_InEveryFormat()
    {
        using var answer = await service.Client.PostAsync("/api/study-readings?side=left&ageMonths=480", Films());
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var study = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal("elbowassist/study/1", study.GetProperty("schema").GetString());
        Assert.Equal(2, study.GetProperty("films").GetArrayLength());

        var address = answer.Content.Headers.ContentLocation!.ToString();
        // The same films again are not read again: the answer comes from the same place.
        using var again = await service.Client.PostAsync("/api/study-readings?side=left&ageMonths=480", Films());
        Assert.Equal(address, again.Content.Headers.ContentLocation!.ToString());

        var text = await service.Client.GetStringAsync($"{address}?format=text");
        Assert.Contains("Nothing here excludes a fracture.", text.ReplaceLineEndings(" "), StringComparison.Ordinal);
        ForbiddenWords.AssertNone(text, "the report");
        using var page = await service.Client.GetAsync($"{address}?format=html");
        Assert.Contains("sandbox", page.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        var bundle = JsonDocument.Parse(await service.Client.GetStringAsync($"{address}?format=fhir&patient=Patient/7")).RootElement;
        Assert.Equal(["Bundle", "Bundle"], bundle.GetProperty("entry").EnumerateArray().Select(e => e.GetProperty("resource").GetProperty("resourceType").GetString()));
        using var zip = new ZipArchive(await service.Client.GetStreamAsync($"{address}?format=zip&patient=Patient/7"));
        Assert.Subset(
            zip.Entries.Select(e => e.FullName).ToHashSet(StringComparer.Ordinal),
            new HashSet<string>(["study.json", "report.html", "report.txt", "left-ap.png.reading.json", "left-lateral.png.overlay.svg", "left-lateral.png.overlay.png", "left-ap.png.fhir.json"], StringComparer.Ordinal));
        await service.ProblemAsync(HttpMethod.Get, $"{address}?format=svg", 400);
        await service.ProblemAsync(HttpMethod.Get, $"{address}?format=fhir&patient=<script>", 400);
    }

    [Fact]
    public async Task AJob_TellsHowManyFilmsAreRead()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/study-readings?ageMonths=481") { Content = Films() };
        request.Headers.Add("Prefer", "respond-async");
        using var answer = await service.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);

        var events = await service.Client.GetStringAsync(answer.Headers.Location + "/events");

        var last = JsonDocument.Parse(events.Split('\n').Last(l => l.StartsWith("data: ", StringComparison.Ordinal))["data: ".Length..]).RootElement;
        Assert.Equal(("done", 2, 2), (last.GetProperty("state").GetString(), last.GetProperty("films").GetInt32(), last.GetProperty("filmsRead").GetInt32()));
        using var study = await service.Client.GetAsync(last.GetProperty("reading").GetString());
        Assert.Equal(HttpStatusCode.OK, study.StatusCode);
    }

    [Fact]
    public async Task ABrokenFilm_RefusesTheStudy_AndIsNamed()
    {
        using var content = Films();
        content.Add(new ByteArrayContent(Encoding.ASCII.GetBytes("no film")), "film", "third.png");
        using var answer = await service.Client.PostAsync("/api/study-readings", content);
        Assert.Contains("third.png", (await RunningService.ProblemOf(answer, 422)).GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("left-ap.png", "text/plain")]
    [InlineData("left-ap.png.info.json", "application/json")]
    public async Task PartsThatMakeNoStudy_AreABadRequest(string name, string type)
    {
        // Alone, a sidecar is no film; and a film given twice is given once too often.
        using var content = new MultipartFormDataContent { { new StringContent("{}", Encoding.UTF8, type), "film", name }, { new StringContent("{}", Encoding.UTF8, type), "film", name } };
        using var answer = await service.Client.PostAsync("/api/study-readings", content);
        await RunningService.ProblemOf(answer, 400);
        using var bare = await service.Client.PostAsync("/api/study-readings", new StringContent("films"));
        await RunningService.ProblemOf(bare, 415);
    }

    private static MultipartFormDataContent Films()
    {
        var content = new MultipartFormDataContent();
        foreach (var file in Directory.EnumerateFiles(Demo).Where(f => !f.EndsWith(".txt", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            content.Add(new ByteArrayContent(File.ReadAllBytes(file)), "film", Path.GetFileName(file));
        }

        return content;
    }
}
