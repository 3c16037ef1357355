using System.Net.Http.Json;
using System.Text.Json;
using ElbowAssist.Cli.Serving;
using ElbowAssist.Store;
using ElbowAssist.Testing;
using ElbowAssist.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace ElbowAssist.Web.Tests;

/// <summary>The service on a free port, with the program's own films and models and an empty store.</summary>
public sealed class RunningService : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly FilmDesk desk = new(preferred: null);
    private readonly StudyStore store;
    private WebApplication? app;

    public RunningService()
    {
        store = StudyStore.Open(folder.File("studies.db"));
        CopyDemos();
        Directory.CreateDirectory(Watched);
    }

    public static string Demos => Path.Combine(AppContext.BaseDirectory, "Demo");

    /// <summary>Folder into which a receiver writes films.</summary>
    public string Watched => folder.File("arriving");

    /// <summary>Small limits, so that tests reach them soon.</summary>
    public ServiceOptions Options => new()
    {
        Port = 0,
        DemoFolder = folder.File("demos"),
        WatchFolder = Watched,
        AllowedOrigins = ["https://viewer.example"],
        MaxRequestBytes = 4 << 20,
        Workers = 2,
        Waiting = 2,
        SlowGrace = TimeSpan.FromSeconds(1.5),
    };

    /// <summary>The routes of the service, as method and pattern.</summary>
    public IReadOnlyList<(string Method, string Pattern)> Routes =>
    [
        .. from endpoint in app!.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
           where endpoint.Metadata.GetMetadata<IExcludeFromDescriptionMetadata>() is not { ExcludeFromDescription: true }
           from method in endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? []
           select (method, "/" + endpoint.RoutePattern.RawText!.Trim('/')),
    ];

    public HttpClient Client { get; private set; } = new();

    public Uri Address => Client.BaseAddress!;

    public StudyStore Store => store;

    public async Task InitializeAsync()
    {
        app = ElbowService.Create(Options, desk, store);
        await app.StartAsync();
        Client = new HttpClient(new DescribedAnswers { InnerHandler = new SocketsHttpHandler() }) { BaseAddress = new Uri(app.Urls.First()) };
    }

    public async Task DisposeAsync()
    {
        await app!.DisposeAsync();
        Dispose();
    }

    public void Dispose()
    {
        Client.Dispose();
        store.Dispose();
        desk.Dispose();
        if (Directory.Exists(folder.Path))
        {
            folder.Dispose();
        }
    }

    // Drawn films have exact places, so tests begin studies with them; the page offers simulated ones only.
    private void CopyDemos()
    {
        foreach (var demo in Directory.EnumerateDirectories(Demos))
        {
            var copy = Directory.CreateDirectory(Path.Combine(folder.File("demos"), Path.GetFileName(demo))).FullName;
            foreach (var file in Directory.EnumerateFiles(demo))
            {
                File.Copy(file, Path.Combine(copy, Path.GetFileName(file)));
            }

            File.WriteAllText(Path.Combine(copy, "title.txt"), Path.GetFileName(demo));
        }
    }

    /// <summary>A study with the films of a demo, once all of them are read.</summary>
    public async Task<JsonElement> DemoAsync(string name)
    {
        var study = await JsonAsync(HttpMethod.Post, "/api/studies", new { demo = name });
        var id = study.GetProperty("id").GetString();
        while (study.GetProperty("films").EnumerateArray().Any(f => f.GetProperty("state").GetString() == "reading"))
        {
            await Task.Delay(50);
            study = await JsonAsync(HttpMethod.Get, $"/api/studies/{id}");
        }

        return study;
    }

    public async Task<JsonElement> JsonAsync(HttpMethod method, string path, object? body = null)
    {
        using var response = await SendAsync(method, path, body);
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, $"{method} {path}: {response.StatusCode} {text}");
        return JsonDocument.Parse(text).RootElement;
    }

    public Task<HttpResponseMessage> SendAsync(HttpMethod method, string path, object? body = null)
    {
        var request = new HttpRequestMessage(method, path) { Content = body is null ? null : JsonContent.Create(body) };
        return Client.SendAsync(request);
    }

    /// <summary>Sends what must be refused and gives the problem.</summary>
    public async Task<JsonElement> ProblemAsync(HttpMethod method, string path, int status, object? body = null)
    {
        using var response = await SendAsync(method, path, body);
        return await ProblemOf(response, status);
    }

    internal static async Task<JsonElement> ProblemOf(HttpResponseMessage response, int status)
    {
        var text = await response.Content.ReadAsStringAsync();
        Assert.True((int)response.StatusCode == status, FormattableString.Invariant($"{(int)response.StatusCode} instead of {status}: {text}"));
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        var problem = JsonDocument.Parse(text).RootElement;
        Assert.Equal(status, problem.GetProperty("status").GetInt32());
        Assert.StartsWith("urn:elbowassist:problem:", problem.GetProperty("type").GetString(), StringComparison.Ordinal);
        Assert.EndsWith(".", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        return problem;
    }
}
