using System.Net;
using ElbowAssist.Cli.Serving;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Store;
using ElbowAssist.Testing;
using ElbowAssist.Web.Films;
using Microsoft.AspNetCore.Builder;

namespace ElbowAssist.Web.Tests;

/// <summary>A token where one is asked for, and honest refusals where too much or too long is asked.</summary>
public sealed class GuardedServiceTests : IDisposable
{
    private static readonly byte[] Film = File.ReadAllBytes(Path.Combine(RunningService.Demos, "adult-film", "lateral.png"));

    private readonly TemporaryFolder folder = new();
    private readonly StudyStore store;

    public GuardedServiceTests() => store = StudyStore.Open(folder.File("studies.db"));

    public void Dispose()
    {
        store.Dispose();
        folder.Dispose();
    }

    [Fact]
    public async Task WithAToken_EveryCallCarriesIt_OrIsRefused()
    {
        using var desk = new FilmDesk(null);
        await using var app = await StartAsync(new ServiceOptions { Port = 0, Token = "0123456789abcdef" }, desk);
        using var client = ClientOf(app);
        foreach (var path in new[] { "/", "/api/studies", "/api/health" })
        {
            using var refused = await client.GetAsync(path);
            Assert.Equal("token-missing", (await RunningService.ProblemOf(refused, 401)).GetProperty("code").GetString());
        }

        using var wrong = new HttpRequestMessage(HttpMethod.Get, "/api/studies");
        wrong.Headers.Authorization = new("Bearer", "0123456789abcdeF");
        using var still = await client.SendAsync(wrong);
        await RunningService.ProblemOf(still, 401);

        using var right = new HttpRequestMessage(HttpMethod.Get, "/api/studies");
        right.Headers.Authorization = new("Bearer", "0123456789abcdef");
        using var answered = await client.SendAsync(right);
        Assert.Equal(HttpStatusCode.OK, answered.StatusCode);

        // Opened once with the token in its address, the page keeps it where no script can read it and no other site sends it.
        using var page = await client.GetAsync("/?token=0123456789abcdef");
        var cookie = page.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task WhoComesWhileAllAreBusy_IsToldWhenToComeAgain()
    {
        using var real = new FilmDesk(null);
        using var desk = new WaitingDesk(real);
        await using var app = await StartAsync(new ServiceOptions { Port = 0, Workers = 1, Waiting = 0 }, desk);
        using var client = ClientOf(app);
        var working = client.PostAsync("/api/readings?name=1.png", new ByteArrayContent(Film));
        await desk.Reached;

        foreach (var path in new[] { "/api/readings?name=2.png", "/api/readings?name=3.png", "/api/study-readings" })
        {
            using HttpContent content = path.EndsWith("png", StringComparison.Ordinal) ? new ByteArrayContent(Film) : new MultipartFormDataContent { { new ByteArrayContent(Film), "film", "4.png" } };
            using var refused = await client.PostAsync(path, content);
            await RunningService.ProblemOf(refused, 429);
            Assert.True(refused.Headers.RetryAfter?.Delta > TimeSpan.Zero);
        }

        desk.GoOn();
        using var answer = await working;
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task AReadingThatTakesTooLong_IsStopped_AndSaysSo()
    {
        using var real = new FilmDesk(null);
        using var desk = new WaitingDesk(real);
        await using var app = await StartAsync(new ServiceOptions { Port = 0, Workers = 1, Patience = TimeSpan.FromSeconds(0.3) }, desk);
        using var client = ClientOf(app);
        using var answer = await client.PostAsync("/api/readings", new ByteArrayContent(Film));
        Assert.Equal("too-slow", (await RunningService.ProblemOf(answer, 503)).GetProperty("code").GetString());
        Assert.True(answer.Headers.RetryAfter?.Delta > TimeSpan.Zero);
    }

    private async Task<WebApplication> StartAsync(ServiceOptions options, IFilmDesk desk)
    {
        var app = ElbowService.Create(options, desk, store);
        await app.StartAsync();
        return app;
    }

    private static HttpClient ClientOf(WebApplication app) => new() { BaseAddress = new Uri(app.Urls.First()) };

    /// <summary>The real desk, which stops before each proposal until it may go on.</summary>
    private sealed class WaitingDesk(FilmDesk desk) : IFilmDesk, IDisposable
    {
        private readonly TaskCompletionSource reached = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly ManualResetEventSlim open = new();

        public Task Reached => reached.Task;

        public ToolIdentity Tool => desk.Tool;

        public void GoOn() => open.Set();

        public OpenedFilm Open(ReadOnlyMemory<byte> file, string name, IReadOnlyList<FilmFacts> stated) => desk.Open(file, name, stated);

        public ReadingInput Propose(OpenedFilm film, ReadOnlyMemory<byte>? placements, CancellationToken cancellation)
        {
            reached.TrySetResult();
            open.Wait(cancellation);
            return desk.Propose(film, placements, cancellation);
        }

        public void Dispose() => open.Dispose();
    }
}
