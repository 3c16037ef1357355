using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Store;
using ElbowAssist.Testing;

namespace ElbowAssist.Web.Tests;

/// <summary>What programs can rely on.</summary>
public sealed class ContractTests(RunningService service) : IClassFixture<RunningService>
{
    private static readonly byte[] Film = File.ReadAllBytes(Path.Combine(RunningService.Demos, "adult-film", "lateral.png"));

    [Fact]
    public async Task TheSameFilm_IsReadOnce_AndComesInEveryFormat()
    {
        using var first = await PostAsync("ageMonths=339&sex=F&side=right&view=lateral");
        var reading = ReadingJson.Read(Encoding.UTF8.GetBytes(await first.Content.ReadAsStringAsync()));
        using var again = await PostAsync("ageMonths=339&sex=F&side=right&view=lateral");
        Assert.Equal(await first.Content.ReadAsStringAsync(), await again.Content.ReadAsStringAsync());
        var address = first.Content.Headers.ContentLocation!.ToString();
        Assert.Equal(address, again.Content.Headers.ContentLocation!.ToString());
        using var other = await PostAsync("ageMonths=340&sex=F&side=right&view=lateral");
        Assert.NotEqual(address, other.Content.Headers.ContentLocation!.ToString());

        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Film)), reading.Image.Sha256);
        foreach (var (format, type) in new[] { ("json", "application/json"), ("svg", "image/svg+xml"), ("png", "image/png"), ("coco", "application/json"), ("fhir", "application/fhir+json") })
        {
            using var response = await service.Client.GetAsync($"{address}?format={format}{(format == "fhir" ? "&patient=Patient/1" : "")}");
            Assert.Equal((HttpStatusCode.OK, type), (response.StatusCode, response.Content.Headers.ContentType?.MediaType));
        }

        Assert.Equal("not-dicom", (await service.ProblemAsync(HttpMethod.Get, $"{address}?format=sr", 409)).GetProperty("code").GetString());
        await service.ProblemAsync(HttpMethod.Get, $"{address}?format=pdf", 400);
        await service.ProblemAsync(HttpMethod.Get, $"{address}?format=fhir", 400);
        await service.ProblemAsync(HttpMethod.Get, "/api/readings/0123456789abcdef0123456789abcdef", 404);
    }

    [Theory]
    [InlineData("view=sideways")]
    [InlineData("ageMonths=-1")]
    [InlineData("ageMonths=old")]
    [InlineData("rowSpacingMm=0")]
    [InlineData("format=pdf")]
    public async Task WhatIsWronglySaid_IsABadRequest(string query)
    {
        using var response = await PostAsync(query);
        await RunningService.ProblemOf(response, 400);
    }

    [Fact]
    public async Task AJob_TellsItsStates_UntilTheReadingIsThere()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/readings?view=lateral&ageMonths=400") { Content = new ByteArrayContent(Film) };
        request.Headers.Add("Prefer", "respond-async");
        using var response = await service.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.Accepted, response.StatusCode);

        var events = await service.Client.GetStringAsync(response.Headers.Location + "/events");

        var states = events.Split('\n').Where(l => l.StartsWith("data: ", StringComparison.Ordinal)).Select(l => JsonDocument.Parse(l["data: ".Length..]).RootElement).ToList();
        Assert.Equal("done", states[^1].GetProperty("state").GetString());
        using var reading = await service.Client.GetAsync(states[^1].GetProperty("reading").GetString());
        Assert.Equal(HttpStatusCode.OK, reading.StatusCode);
        await service.ProblemAsync(HttpMethod.Get, "/api/readings/jobs/0000000000000000", 404);
    }

    [Fact]
    public async Task ACancelledJob_Ends_AndGivesNoReading()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/readings?view=lateral&ageMonths=401") { Content = new ByteArrayContent(Film) };
        request.Headers.Add("Prefer", "respond-async");
        using var response = await service.Client.SendAsync(request);
        using var stopped = await service.Client.DeleteAsync(response.Headers.Location);
        var events = await service.Client.GetStringAsync(response.Headers.Location + "/events");
        Assert.Contains("cancelled", events, StringComparison.Ordinal);
    }

    [Fact]
    public async Task LandmarksLaidElsewhere_AreMeasuredAsEverywhere()
    {
        var coco = await File.ReadAllBytesAsync(Path.Combine(RunningService.Demos, "adult-effusion", "landmarks.coco.json"));
        using var response = await service.Client.PostAsync("/api/measurements?name=right-lateral.png&width=800&height=1200&ageMonths=492&side=right", new ByteArrayContent(coco));
        var reading = ReadingJson.Read(await response.Content.ReadAsByteArrayAsync());
        // Drawn with a shaft-condylar angle of 40° and the line through the middle of the capitellum.
        Assert.InRange(reading.Measurements.First(m => m.Name == "shaft-condylar-angle").Value!.Value, 37, 43);
        ForbiddenWords.AssertNone(await response.Content.ReadAsStringAsync(), "the reading");
    }

    [Fact]
    public async Task AStudyWithoutPlacements_IsReadByTheModels()
    {
        var study = await service.DemoAsync("adult-two-views");
        Assert.All(study.GetProperty("films").EnumerateArray(), f => Assert.Equal("ready", f.GetProperty("state").GetString()));
        Assert.Equal(["lateral", "ap"], study.GetProperty("films").EnumerateArray().Select(f => f.GetProperty("view").GetString()));
    }

    [Fact]
    public async Task ATurnedElbow_FollowsTheTurn_AndSaysThatItIsSimulated()
    {
        var id = (await service.DemoAsync("adult-effusion")).GetProperty("id").GetString();
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/question", new { ageMonths = 492, sex = "F", injuredSide = "right", proposalsVisible = false });
        await service.ProblemAsync(HttpMethod.Get, $"/api/studies/{id}/films/film-1/turned", 409);
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/question", new { ageMonths = 492, sex = "F", injuredSide = "right", proposalsVisible = true });

        var turned = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}/films/film-1/turned");

        Assert.StartsWith("A simulated, uninjured elbow", turned.GetProperty("words").GetString(), StringComparison.Ordinal);
        var frames = turned.GetProperty("frames").EnumerateArray().ToList();
        Assert.Equal([-20, -15, -10, -5, 0, 5, 10, 15, 20], frames.Select(f => f.GetProperty("degrees").GetInt32()));
        // The pictures differ from step to step: the elbow turns.
        Assert.Equal(frames.Count, frames.Select(f => f.GetProperty("picture").GetString()).Distinct().Count());
    }

    [Fact]
    public async Task ACaseFile_ShowsTheTeachersLine_OnlyBesideTheLearnersOwn()
    {
        var teacher = (await service.DemoAsync("adult-effusion")).GetProperty("id").GetString();
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{teacher}/question", new { ageMonths = 492, sex = "F", injuredSide = "right" });
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{teacher}/films/film-1/lines", new { name = "anterior-humeral-line", from = new[] { 250.0, 260 }, to = new[] { 250.0, 460 } });
        await service.ProblemAsync(HttpMethod.Get, $"/api/studies/{teacher}/case.json", 409);
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{teacher}/answers", new[] { new { itemId = "conclusion.outcome", choices = new[] { "cannot-judge" } } });
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{teacher}/close");
        var file = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{teacher}/case.json");

        var learner = (await service.JsonAsync(HttpMethod.Post, "/api/cases", file)).GetProperty("id").GetString();
        async Task<JsonElement> FilmAsync(string? id)
        {
            var study = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}");
            while (study.GetProperty("films")[0].GetProperty("state").GetString() == "reading")
            {
                await Task.Delay(50);
                study = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}");
            }

            return study.GetProperty("films")[0];
        }

        Assert.Empty((await FilmAsync(learner)).GetProperty("brought").EnumerateArray());
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{learner}/films/film-1/lines", new { name = "anterior-humeral-line", from = new[] { 256.0, 260 }, to = new[] { 256.0, 460 } });
        Assert.True(Assert.Single((await FilmAsync(learner)).GetProperty("brought").EnumerateArray()).GetProperty("byTeacher").GetBoolean());

        // Back at the teacher's, the learner's line lies over the film, without a name.
        var lines = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{learner}/lines.json");
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{teacher}/lines.json", lines);
        var brought = Assert.Single((await FilmAsync(teacher)).GetProperty("brought").EnumerateArray());
        Assert.Equal([256.0, 260], brought.GetProperty("from").EnumerateArray().Select(v => v.GetDouble()));
        Assert.False(brought.GetProperty("byTeacher").GetBoolean());
        await service.ProblemAsync(HttpMethod.Post, "/api/cases", 400, new { schema = "other" });
    }

    [Fact]
    public async Task AFilmThatArrives_BecomesAStudy()
    {
        File.Copy(Path.Combine(RunningService.Demos, "adult-effusion", "right-ap.png"), Path.Combine(service.Watched, "arrived.png"));
        string? Arrived() => service.Store.List().SelectMany(s => s.Films).FirstOrDefault(f => f.Name == "arrived.png")?.Sha256;
        for (var i = 0; i < 600 && Arrived() is null; i++)
        {
            await Task.Delay(100);
        }

        Assert.NotNull(Arrived());
    }

    [Fact]
    public async Task AFilmWhoseStudyWasDeleted_DoesNotArriveAgain()
    {
        byte[] film = PlainPng.Grey16(32, 32, (x, y) => (ushort)(x * y)), next = PlainPng.Grey16(32, 32, (x, y) => (ushort)(x + y));
        async Task<StoredStudy> ArrivedAsync(string name, byte[] content)
        {
            await File.WriteAllBytesAsync(Path.Combine(service.Watched, name), content);
            StoredStudy? arrived = null;
            while (arrived is null)
            {
                await Task.Delay(100);
                arrived = service.Store.List().FirstOrDefault(s => s.Films.Any(f => f.Name == name));
            }

            return arrived;
        }

        var study = await ArrivedAsync("deleted.png", film).WaitAsync(TimeSpan.FromMinutes(1));
        using var gone = await service.Client.DeleteAsync($"/api/studies/{study.Id}");
        File.SetLastWriteTimeUtc(Path.Combine(service.Watched, "deleted.png"), new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        await File.WriteAllBytesAsync(Path.Combine(service.Watched, "again.png"), film);
        await ArrivedAsync("next.png", next).WaitAsync(TimeSpan.FromMinutes(1));
        Assert.DoesNotContain(service.Store.List().SelectMany(s => s.Films), f => f.Name is "deleted.png" or "again.png");
    }

    [Fact]
    public async Task AnEarlierFilm_ComesBackBlinded_OnlyFromAClosedRead()
    {
        foreach (var old in (await service.JsonAsync(HttpMethod.Get, "/api/studies")).EnumerateArray())
        {
            using var gone = await service.Client.DeleteAsync($"/api/studies/{old.GetProperty("id").GetString()}");
        }

        var id = (await service.DemoAsync("adult-effusion")).GetProperty("id").GetString();
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/question", new { ageMonths = 492, sex = "F", injuredSide = "right" });
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/films/film-1/lines", new { name = "anterior-humeral-line", from = new[] { 250.0, 260 }, to = new[] { 250.0, 460 } });
        await service.ProblemAsync(HttpMethod.Post, "/api/practice/hand", 409);
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/answers", new[] { new { itemId = "conclusion.outcome", choices = new[] { "cannot-judge" } } });
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/close");

        var hand = await service.JsonAsync(HttpMethod.Post, "/api/practice/hand");
        Assert.Equal(["id", "line"], hand.EnumerateObject().Select(p => p.Name));
        var address = $"/api/practice/hand/{hand.GetProperty("id").GetString()}/answer";
        var again = await service.JsonAsync(HttpMethod.Post, address, new { name = "anterior-humeral-line", from = new[] { 256.0, 260 }, to = new[] { 256.0, 460 } });

        // Six pixels aside and parallel; the capitellum of the drawn film is about 116 pixels wide.
        Assert.Equal(0, again.GetProperty("angleDegrees").GetDouble(), 6);
        Assert.InRange(again.GetProperty("ofCapitellum").GetDouble(), 0.04, 0.06);
        await service.ProblemAsync(HttpMethod.Post, address, 404, new { name = "anterior-humeral-line", from = new[] { 256.0, 260 }, to = new[] { 256.0, 460 } });
    }

    [Fact]
    public async Task AStudy_CanBeTakenAway_AndIsGoneWhenDeleted()
    {
        var id = (await service.DemoAsync("adult-effusion")).GetProperty("id").GetString();
        using (var zip = new System.IO.Compression.ZipArchive(await service.Client.GetStreamAsync($"/api/studies/{id}/backup.zip")))
        {
            Assert.Equal(["entries.jsonl", "films/film-1-right-lateral.png", "films/film-2-right-ap.png", "study.json"], zip.Entries.Select(e => e.FullName).Order(StringComparer.Ordinal));
        }

        using var deleted = await service.Client.DeleteAsync($"/api/studies/{id}");
        Assert.Equal(HttpStatusCode.NoContent, deleted.StatusCode);
        await service.ProblemAsync(HttpMethod.Get, $"/api/studies/{id}", 404);
        Assert.Null(service.Store.Find(id!));
    }

    [Fact]
    public async Task EveryChange_IsKeptWithWhoMadeIt_AndTheListTellsWhenItChanged()
    {
        var id = (await service.DemoAsync("adult-effusion")).GetProperty("id").GetString()!;
        using var before = await service.Client.GetAsync("/api/studies");
        using (var change = new HttpRequestMessage(HttpMethod.Post, $"/api/studies/{id}/question") { Content = JsonContent.Create(new { ageMonths = 492, sex = "F", injuredSide = "right" }) })
        {
            change.Headers.Add("Reader", "M%C3%9C");
            using var answer = await service.Client.SendAsync(change);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        Assert.All(service.Store.Entries(id), e => Assert.Equal("MÜ", e.Who));
        using var changed = await service.Client.GetAsync("/api/studies");
        Assert.NotEqual(before.Headers.ETag, changed.Headers.ETag);
        using var again = new HttpRequestMessage(HttpMethod.Get, "/api/studies");
        again.Headers.IfNoneMatch.Add(changed.Headers.ETag!);
        using var same = await service.Client.SendAsync(again);
        Assert.Equal(HttpStatusCode.NotModified, same.StatusCode);
    }

    [Fact]
    public async Task ABrokenFilm_IsNamed_AndTheRestGoesOn()
    {
        var id = (await service.DemoAsync("adult-effusion")).GetProperty("id").GetString();
        using var response = await service.Client.PostAsync($"/api/studies/{id}/films?name=broken.png", new ByteArrayContent(Film[..5000]));
        var study = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}");
        while (study.GetProperty("films")[2].GetProperty("state").GetString() == "reading")
        {
            await Task.Delay(20);
            study = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}");
        }

        Assert.Equal("unreadable", study.GetProperty("films")[2].GetProperty("state").GetString());
        Assert.Contains("broken.png", study.GetProperty("films")[2].GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal("ready", study.GetProperty("films")[0].GetProperty("state").GetString());
    }

    [Fact]
    public async Task APracticeFilm_KeepsItsTruth_UntilItIsAnswered()
    {
        await service.ProblemAsync(HttpMethod.Post, "/api/practice", 400, new { patient = "dog", view = "lateral", level = 1 });
        var film = await service.JsonAsync(HttpMethod.Post, "/api/practice", new { patient = "adult", view = "lateral", level = 1 });
        Assert.StartsWith("Simulated", film.GetProperty("words").GetString(), StringComparison.Ordinal);
        Assert.Equal(["id", "words", "view", "width", "height", "lines", "carries"], film.EnumerateObject().Select(p => p.Name));

        var truth = await service.JsonAsync(HttpMethod.Post, $"/api/practice/{film.GetProperty("id").GetString()}/answer", new { lines = Array.Empty<object>(), trueView = "yes", fracture = "no", carries = new[] { "anterior-humeral-line.position" } });

        Assert.NotEmpty(truth.GetProperty("lines").EnumerateArray());
        // Three measurements were asked for, one was ticked; what cannot be carried says why.
        var carries = truth.GetProperty("carries").EnumerateArray().ToList();
        Assert.Equal((3, 1), (carries.Count, carries.Count(c => c.GetProperty("said").GetBoolean())));
        Assert.All(carries, c => Assert.Equal(c.GetProperty("can").GetBoolean(), c.GetProperty("reasons").GetArrayLength() == 0));
        Assert.Single((await service.JsonAsync(HttpMethod.Get, "/api/practice/results")).EnumerateArray(), r => r.GetProperty("kind").GetString() == "lines");
        ForbiddenWords.AssertNone(truth.GetRawText(), "the truth");
    }

    private Task<HttpResponseMessage> PostAsync(string query) => service.Client.PostAsync($"/api/readings?{query}", new ByteArrayContent(Film));
}
