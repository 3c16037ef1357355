using System.Text.Json;
using ElbowAssist.Testing;

namespace ElbowAssist.Web.Tests;

/// <summary>Nothing of the tool's leaves the service before the reader's own line or answers, and nothing withheld ever.</summary>
public sealed class CurtainTests(RunningService service) : IClassFixture<RunningService>
{
    private static readonly string[] AlignmentAnswers =
        ["alignment.anterior-humeral-line", "alignment.radiocapitellar-lateral", "alignment.radiocapitellar-ap", "alignment.ulnohumeral"];

    [Fact]
    public async Task BeforeOwnAnswers_NoRouteGivesAnythingOfTheTools()
    {
        var id = await BegunAsync("adult-effusion");
        await AnswerAsync(id, "history.trauma", "yes");

        var study = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}");

        foreach (var film in study.GetProperty("films").EnumerateArray())
        {
            Assert.All(new[] { "carries", "alignment", "evidence" }, n => Assert.Equal(JsonValueKind.Null, film.GetProperty(n).ValueKind));
        }

        Assert.Empty(study.GetProperty("together").EnumerateArray());
        Assert.Equal("walk.own-answer-first", Code(await service.ProblemAsync(HttpMethod.Post, $"/api/studies/{id}/shown", 409, new { topic = "alignment" })));
        Assert.Equal("walk.own-answer-first", Code(await service.ProblemAsync(HttpMethod.Post, $"/api/studies/{id}/films/film-1/landmarks/ulna.coronoid/try", 409, new { x = 10, y = 10 })));
        Assert.Equal("walk.own-answer-first", Code(await service.ProblemAsync(HttpMethod.Put, $"/api/studies/{id}/films/film-1/landmarks/ulna.coronoid", 409, new { x = 10, y = 10 })));
        Assert.Equal("walk.own-line-first", Code(await service.ProblemAsync(HttpMethod.Post, $"/api/studies/{id}/films/film-1/lines/anterior-humeral-line/compare", 409)));
        Assert.Equal("walk.own-answer-first", Code(await service.ProblemAsync(HttpMethod.Post, $"/api/studies/{id}/films/film-1/enhanced/cortex.radial-head", 409)));
        foreach (var file in new[] { "report.html", "report.txt", "export.zip" })
        {
            Assert.Equal("walk.not-closed", Code(await service.ProblemAsync(HttpMethod.Get, $"/api/studies/{id}/{file}", 409)));
        }

        Assert.Equal("walk.own-answer-first", Code(await service.ProblemAsync(HttpMethod.Get, $"/api/studies/{id}/growth.svg", 409)));
    }

    [Fact]
    public async Task OwnLine_ShowsTheToolsLineOfThatName_AndNothingElse()
    {
        var id = await BegunAsync("adult-effusion");
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/films/film-1/lines", new { name = "anterior-humeral-line", from = new[] { 250.0, 260 }, to = new[] { 249.0, 460 } });
        var before = Film(await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}"), 0);
        Assert.Equal(JsonValueKind.Null, before.GetProperty("alignment").ValueKind);
        Assert.Equal(JsonValueKind.Null, before.GetProperty("ownLines")[0].GetProperty("difference").ValueKind);

        var after = await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/films/film-1/lines/anterior-humeral-line/compare");

        var shown = Film(after, 0).GetProperty("alignment");
        Assert.True(shown.GetProperty("partial").GetBoolean());
        Assert.All(shown.GetProperty("measurements").EnumerateArray(), m => Assert.StartsWith("anterior-humeral-line.", m.GetProperty("name").GetString(), StringComparison.Ordinal));
        Assert.Empty(shown.GetProperty("landmarks").EnumerateArray());
        Assert.DoesNotContain("radiocapitellar", shown.GetProperty("overlay").GetString(), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Null, Film(after, 1).GetProperty("alignment").ValueKind);
        // The drawn film's anterior cortex runs through (250, 260) and (249, 460): the reader's line is laid on it.
        Assert.Matches("differ by 0\\.[0-9]°", Film(after, 0).GetProperty("ownLines")[0].GetProperty("difference").GetString());

        // Answered now, the question was answered with the tool's line in view; the others were not.
        await AnswerAsync(id, "alignment.anterior-humeral-line", "middle-third");
        var items = (await AnswerAsync(id, "alignment.ulnohumeral", "yes")).GetProperty("walk").GetProperty("steps").EnumerateArray()
            .SelectMany(s => s.GetProperty("items").EnumerateArray()).ToDictionary(i => i.GetProperty("id").GetString()!, i => i.GetProperty("afterTool").GetBoolean());
        Assert.True(items["alignment.anterior-humeral-line"]);
        Assert.False(items["alignment.ulnohumeral"]);
    }

    [Fact]
    public async Task AfterOwnAnswers_AlignmentIsShown_AndWhatIsWithheldHasNoValueAnywhere()
    {
        var id = await BegunAsync("adult-effusion");
        await AnswerAsync(id, AlignmentAnswers[0], "middle-third");
        await AnswerAsync(id, AlignmentAnswers[1], "crosses");
        await AnswerAsync(id, AlignmentAnswers[2], "crosses");
        await AnswerAsync(id, AlignmentAnswers[3], "yes");

        var study = await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/shown", new { topic = "alignment" });

        var alignment = Film(study, 0).GetProperty("alignment");
        Assert.False(alignment.GetProperty("partial").GetBoolean());
        var withheld = alignment.GetProperty("measurements").EnumerateArray().Where(m => m.GetProperty("state").GetString() == "withheld").ToList();
        Assert.NotEmpty(withheld);
        Assert.All(withheld, m =>
        {
            Assert.Equal(JsonValueKind.Null, m.GetProperty("value").ValueKind);
            Assert.NotEmpty(m.GetProperty("reasons").EnumerateArray());
            Assert.DoesNotContain($"data-name=\"{m.GetProperty("name").GetString()}\"", alignment.GetProperty("overlay").GetString(), StringComparison.Ordinal);
        });
        // Effusion is another topic, and stays behind its own questions.
        Assert.Equal(JsonValueKind.Null, Film(study, 0).GetProperty("evidence").ValueKind);
        ForbiddenWords.AssertNone(study.GetRawText(), "the study");
    }

    [Fact]
    public async Task ALandmarkMoved_MovesTheValue_ByTheSameGeometry_AndCanBeGivenBack()
    {
        var id = await BegunAsync("adult-effusion", visible: true);
        var before = await service.JsonAsync(HttpMethod.Get, $"/api/studies/{id}");
        var place = new { x = 256.0, y = 410.5 };

        var tried = await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/films/film-1/landmarks/humerus.anterior.4/try", place);
        var kept = await service.JsonAsync(HttpMethod.Put, $"/api/studies/{id}/films/film-1/landmarks/humerus.anterior.4", place);
        var back = await service.JsonAsync(HttpMethod.Delete, $"/api/studies/{id}/films/film-1/landmarks/humerus.anterior.4");

        string? Value(JsonElement alignment) => alignment.GetProperty("measurements").EnumerateArray().First(m => m.GetProperty("name").GetString() == "anterior-humeral-line.position").GetProperty("value").GetString();
        string Number(JsonElement alignment) => Value(alignment)!.Split(" (")[0];
        Assert.NotEqual(Value(Film(before, 0).GetProperty("alignment")), Value(Film(kept, 0).GetProperty("alignment")));
        Assert.Equal(Number(tried), Number(Film(kept, 0).GetProperty("alignment")));
        Assert.Equal(Value(Film(before, 0).GetProperty("alignment")), Value(Film(back, 0).GetProperty("alignment")));
        Assert.True(Film(kept, 0).GetProperty("alignment").GetProperty("landmarks").EnumerateArray().Single(l => l.GetProperty("name").GetString() == "humerus.anterior.4").GetProperty("byReader").GetBoolean());
        Assert.Single(Status(id).Walk!.Moved);
    }

    [Fact]
    public async Task AClosedRead_GivesReportAndFiles_AndTakesNoMore()
    {
        var id = await BegunAsync("adult-effusion");
        await AnswerAsync(id, "effusion.call", "yes");
        await service.ProblemAsync(HttpMethod.Post, $"/api/studies/{id}/close", 409);
        await AnswerAsync(id, "conclusion.outcome", "no-fracture-seen");

        var closed = await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/close");

        Assert.Equal("effusion, no break traced", closed.GetProperty("followUp").GetString());
        var text = await service.Client.GetStringAsync($"/api/studies/{id}/report.txt");
        Assert.Contains("Nothing here excludes a fracture.", text.ReplaceLineEndings(" "), StringComparison.Ordinal);
        ForbiddenWords.AssertNone(text, "the report");
        using var page = await service.Client.GetAsync($"/api/studies/{id}/report.html");
        Assert.Contains("sandbox", page.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        using var zip = new System.IO.Compression.ZipArchive(await service.Client.GetStreamAsync($"/api/studies/{id}/export.zip"));
        Assert.Contains(zip.Entries, e => e.FullName == "film-1-right-lateral.png.reading.json");
        Assert.Equal("walk.closed", Code(await service.ProblemAsync(HttpMethod.Post, $"/api/studies/{id}/answers", 409, new[] { new { itemId = "effusion.call", choices = new[] { "no" } } })));
        Assert.Contains(id, (await service.JsonAsync(HttpMethod.Get, "/api/follow-up")).EnumerateArray().Select(s => s.GetProperty("id").GetString()));
    }

    private Store.StudyStatus Status(string id) => Store.StudyStatus.Of(service.Store.Entries(id));

    private async Task<string> BegunAsync(string demo, bool visible = false)
    {
        var id = (await service.DemoAsync(demo)).GetProperty("id").GetString()!;
        await service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/question", new { ageMonths = 492, sex = "F", injuredSide = "right", maturity = "adult", proposalsVisible = visible });
        return id;
    }

    private Task<JsonElement> AnswerAsync(string id, string item, string choice) =>
        service.JsonAsync(HttpMethod.Post, $"/api/studies/{id}/answers", new[] { new { itemId = item, choices = new[] { choice } } });

    private static JsonElement Film(JsonElement study, int index) => study.GetProperty("films")[index];

    private static string? Code(JsonElement problem) => problem.GetProperty("code").GetString();
}
