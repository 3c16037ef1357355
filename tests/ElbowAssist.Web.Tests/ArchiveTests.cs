using System.Net;
using System.Text;
using System.Text.Json;
using ElbowAssist.Cli.Serving;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Store;
using ElbowAssist.Testing;
using Microsoft.AspNetCore.Builder;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Web.Tests;

/// <summary>Films by DICOMweb from a real archive (Orthanc), and by links that name their study.</summary>
public sealed class ArchiveTests
{
    [ToolFact("Orthanc")]
    public async Task AStudyOfTheArchive_IsFound_Opened_AndFetchedFilmByFilm()
    {
        using var http = new HttpClient();
        using var orthanc = await Orthanc.StartAsync(http);
        var film = new SampleFilm { With = b => b.Text(Tag.AccessionNumber, "A-77").Text(Tag.StudyDescription, "Elbow <b>two</b> views") }.File();
        var second = new SampleFilm { Seed = 5, With = b => b.Text(Tag.AccessionNumber, "A-77") }.File();
        var uid = DicomFile.Parse(film, DicomLimits.Default).Dataset.Text(Tag.StudyInstanceUid)!;
        Assert.All(await new DicomWebClient(http, orthanc.Root).StoreAsync([film, second]), o => Assert.Equal(StoreState.Stored, o.State));
        await using var page = await OnePage.StartAsync(orthanc.Root);

        Assert.True((await page.JsonAsync(HttpMethod.Get, "/api/archive")).GetProperty("named").GetBoolean());
        var byNumber = Assert.Single((await page.JsonAsync(HttpMethod.Get, "/api/archive/studies?accession=A-77")).EnumerateArray());
        Assert.Equal((uid, "Elbow <b>two</b> views"), (byNumber.GetProperty("studyInstanceUid").GetString(), byNumber.GetProperty("description").GetString()));
        var day = byNumber.GetProperty("date").GetString();
        Assert.Single((await page.JsonAsync(HttpMethod.Get, $"/api/archive/studies?from={day}")).EnumerateArray());
        Assert.Empty((await page.JsonAsync(HttpMethod.Get, "/api/archive/studies?from=2001-01-01")).EnumerateArray());
        // Nobody's name leaves the archive for the list.
        Assert.DoesNotContain("PHANTOM", byNumber.GetRawText(), StringComparison.OrdinalIgnoreCase);

        var opened = await page.JsonAsync(HttpMethod.Post, $"/api/archive/studies/{uid}");
        var id = opened.GetProperty("id").GetString();
        var films = opened.GetProperty("films").EnumerateArray().ToList();
        Assert.Equal(2, films.Count);
        foreach (var one in films)
        {
            await page.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/films/archived", one);
        }

        // Opened again by its link it is the same study, and nothing of it is fetched twice.
        var again = await page.JsonAsync(HttpMethod.Post, $"/api/archive/studies/{uid}");
        Assert.Equal(id, again.GetProperty("id").GetString());
        Assert.Empty(again.GetProperty("films").EnumerateArray());
        Assert.Equal(2, (await page.JsonAsync(HttpMethod.Get, $"/api/studies/{id}")).GetProperty("films").GetArrayLength());

        // A film of another study is not mixed in; one the archive does not hold is named as such.
        Assert.Equal(HttpStatusCode.BadRequest, await page.StatusAsync(HttpMethod.Post, $"/api/studies/{id}/films/archived", new { study = "1.2.3", series = "1.2", instance = "1.3" }));
        Assert.Equal(HttpStatusCode.BadGateway, await page.StatusAsync(HttpMethod.Post, $"/api/studies/{id}/films/archived", new { study = uid, series = "1.2", instance = "1.3" }));
        Assert.Equal(HttpStatusCode.NotFound, await page.StatusAsync(HttpMethod.Post, "/api/archive/studies/1.2.3.4"));
    }

    [Fact]
    public async Task AnArchiveThatIsDown_IsToldInOneSentence()
    {
        await using var page = await OnePage.StartAsync(new Uri("http://127.0.0.1:9/dicom-web"));
        Assert.Equal(HttpStatusCode.BadGateway, await page.StatusAsync(HttpMethod.Get, "/api/archive/studies?accession=1"));
    }

    [Fact]
    public async Task WithoutAnArchive_ALinkOpensWhatArrived_AndNothingElse()
    {
        await using var page = await OnePage.StartAsync(null);
        Assert.False((await page.JsonAsync(HttpMethod.Get, "/api/archive")).GetProperty("named").GetBoolean());
        Assert.Equal(HttpStatusCode.NotFound, await page.StatusAsync(HttpMethod.Get, "/api/archive/studies"));
        Assert.Equal(HttpStatusCode.NotFound, await page.StatusAsync(HttpMethod.Post, "/api/archive/studies/1.2.3"));
        Assert.Equal(HttpStatusCode.BadRequest, await page.StatusAsync(HttpMethod.Post, "/api/archive/studies/..%2F1"));
        var file = new SampleFilm().File();
        var uid = DicomFile.Parse(file, DicomLimits.Default).Dataset.Text(Tag.StudyInstanceUid)!;

        await File.WriteAllBytesAsync(Path.Combine(page.Watched, "arrived.dcm"), file);
        for (var i = 0; i < 300 && page.Store.List().Count == 0; i++)
        {
            await Task.Delay(100);
        }

        var opened = await page.JsonAsync(HttpMethod.Post, $"/api/archive/studies/{uid}");
        Assert.Equal(page.Store.List().Single().Id, opened.GetProperty("id").GetString());
        Assert.Equal("watched", page.Store.List().Single().Origin);
    }

    /// <summary>A service of its own with an archive, or without one.</summary>
    private sealed class OnePage : IAsyncDisposable
    {
        private readonly TemporaryFolder folder = new();
        private readonly FilmDesk desk = new(preferred: null);
        private WebApplication? app;

        private OnePage() => Store = StudyStore.Open(folder.File("studies.db"));

        public StudyStore Store { get; }

        public string Watched => folder.File("arriving");

        private HttpClient Client { get; } = new(new DescribedAnswers { InnerHandler = new SocketsHttpHandler() });

        public static async Task<OnePage> StartAsync(Uri? archive)
        {
            var page = new OnePage();
            Directory.CreateDirectory(page.Watched);
            page.app = ElbowService.Create(new ServiceOptions { Port = 0, Archive = archive, WatchFolder = page.Watched, Workers = 1 }, page.desk, page.Store);
            await page.app.StartAsync();
            page.Client.BaseAddress = new Uri(page.app.Urls.First());
            return page;
        }

        public async Task<JsonElement> JsonAsync(HttpMethod method, string path, object? body = null)
        {
            using var answer = await SendAsync(method, path, body);
            var text = await answer.Content.ReadAsStringAsync();
            Assert.True(answer.IsSuccessStatusCode, $"{method} {path}: {answer.StatusCode} {text}");
            return JsonDocument.Parse(text).RootElement;
        }

        public async Task<HttpStatusCode> StatusAsync(HttpMethod method, string path, object? body = null)
        {
            using var answer = await SendAsync(method, path, body);
            await RunningService.ProblemOf(answer, (int)answer.StatusCode);
            return answer.StatusCode;
        }

        public async ValueTask DisposeAsync()
        {
            Client.Dispose();
            await app!.DisposeAsync();
            Store.Dispose();
            desk.Dispose();
            folder.Dispose();
        }

        private async Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, object? body)
        {
            using var request = new HttpRequestMessage(method, path) { Content = body is null ? null : new StringContent(JsonSerializer.Serialize(body), Encoding.UTF8, "application/json") };
            return await Client.SendAsync(request);
        }
    }
}
