using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;

namespace ElbowAssist.Web.Tests;

/// <summary>Callers who mean no good, and callers who know no better.</summary>
public sealed class HostileRequestTests(RunningService service) : IClassFixture<RunningService>
{
    [Theory]
    [InlineData("evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("localhost.evil.example:80")]
    public async Task AForeignHostName_IsNotAnswered(string host)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/studies") { Headers = { Host = host } };
        using var response = await service.Client.SendAsync(request);
        Assert.Equal("foreign-host", (await RunningService.ProblemOf(response, 421)).GetProperty("code").GetString());
    }

    [Theory]
    [InlineData("Origin", "https://evil.example", 403)]
    [InlineData("Origin", "null", 403)]
    [InlineData("Origin", "https://viewer.example.evil.example", 403)]
    [InlineData("Sec-Fetch-Site", "cross-site", 403)]
    public async Task APageOfAnotherOrigin_IsRefused(string header, string value, int status)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/studies") { Content = new StringContent("{}", Encoding.UTF8, "application/json") };
        request.Headers.Add(header, value);
        using var response = await service.Client.SendAsync(request);
        await RunningService.ProblemOf(response, status);
        Assert.False(response.Headers.Contains("Access-Control-Allow-Origin"));
    }

    [Fact]
    public async Task AnAllowedOrigin_IsAnsweredByName()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/health");
        request.Headers.Add("Origin", "https://viewer.example");
        using var response = await service.Client.SendAsync(request);
        Assert.Equal("https://viewer.example", response.Headers.GetValues("Access-Control-Allow-Origin").Single());
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/main.js")]
    [InlineData("/api/health")]
    [InlineData("/nowhere")]
    public async Task EveryAnswer_CarriesThePolicy(string path)
    {
        using var response = await service.Client.GetAsync(path);
        var policy = response.Headers.GetValues("Content-Security-Policy").Single();
        Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", response.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("no-referrer", response.Headers.GetValues("Referrer-Policy").Single());
    }

    [Fact]
    public async Task ThePage_NamesNoOtherHost()
    {
        foreach (var file in new[] { "/", "/main.js", "/study.js", "/notes.js", "/pane.js", "/start.js", "/practice.js", "/turning.js", "/arrivals.js", "/labels.js", "/api.js", "/dom.js", "/style.css" })
        {
            var text = (await service.Client.GetStringAsync(file)).Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
            Assert.DoesNotContain("://", text, StringComparison.Ordinal);
            Assert.DoesNotContain("innerHTML", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task ABodyLargerThanTheLimit_IsRefused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/readings") { Content = new ByteArrayContent(new byte[(4 << 20) + 1]) };
        // The answer comes before the body is sent.
        request.Headers.ExpectContinue = true;
        using var response = await service.Client.SendAsync(request);
        await RunningService.ProblemOf(response, 413);
    }

    [Fact]
    public async Task ABodyWithoutALength_IsRefusedOnceItIsTooLarge()
    {
        using var content = new StreamContent(new MemoryStream(new byte[(4 << 20) + 1]));
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/readings") { Content = content };
        request.Headers.TransferEncodingChunked = true;
        using var response = await service.Client.SendAsync(request);
        await RunningService.ProblemOf(response, 413);
    }

    [Theory]
    [InlineData("no picture at all")]
    [InlineData("")]
    public async Task WhatIsNoFilm_IsRefusedInOneSentence(string text)
    {
        using var response = await service.Client.PostAsync("/api/readings?name=film.png", new StringContent(text));
        await RunningService.ProblemOf(response, text.Length == 0 ? 400 : 422);
    }

    [Theory]
    [InlineData("../../../etc/passwd", "passwd")]
    [InlineData("..\\..\\windows\\film.png", "film.png")]
    [InlineData("<img src=x onerror=alert(1)>.png", "<img src=x onerror=alert(1)>.png")]
    [InlineData("a\u0000b\r\nSet-Cookie: x.png", "abSet-Cookie: x.png")]
    [InlineData("..", "film")]
    public async Task AName_IsOnlyEverText(string name, string kept)
    {
        var id = (await service.JsonAsync(HttpMethod.Post, "/api/studies", new { title = "<script>alert(1)</script>" })).GetProperty("id").GetString();
        using var content = new ByteArrayContent(Encoding.ASCII.GetBytes("not a film: " + name));
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        using var response = await service.Client.PostAsync($"/api/studies/{id}/films?name={Uri.EscapeDataString(name)}", content);
        var study = JsonDocument.Parse(await response.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal(kept, study.GetProperty("films")[0].GetProperty("name").GetString());
        Assert.Equal("application/json", response.Content.Headers.ContentType?.MediaType);
    }

    [Theory]
    [InlineData("/..%2f..%2fetc/passwd")]
    [InlineData("/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/page/index.html")]
    [InlineData("/api/studies/..%2f..")]
    [InlineData("/api/studies/' OR 1=1 --")]
    public async Task APathThatLeadsNowhere_IsNotFound(string path)
    {
        using var response = await service.Client.GetAsync(path);
        await RunningService.ProblemOf(response, 404);
    }

    [Theory]
    [InlineData("{\"itemId\":")]
    [InlineData("[1,2,3]")]
    [InlineData("null")]
    public async Task BrokenJson_IsABadRequest(string body)
    {
        var id = (await service.JsonAsync(HttpMethod.Post, "/api/studies", new { })).GetProperty("id").GetString();
        using var response = await service.Client.PostAsync($"/api/studies/{id}/answers", new StringContent(body, Encoding.UTF8, "application/json"));
        await RunningService.ProblemOf(response, 400);
    }

    [Fact]
    public async Task ATruncatedRequest_LeavesTheServiceUp()
    {
        using (var socket = new TcpClient())
        {
            await socket.ConnectAsync(IPAddress.Loopback, service.Address.Port);
            await socket.GetStream().WriteAsync(Encoding.ASCII.GetBytes(FormattableString.Invariant($"POST /api/readings HTTP/1.1\r\nHost: 127.0.0.1:{service.Address.Port}\r\nContent-Length: 100000\r\n\r\nabc")));
        }

        Assert.Equal("up", (await service.JsonAsync(HttpMethod.Get, "/api/health")).GetProperty("status").GetString());
    }

    [Theory]
    [InlineData("POST /api/readings HTTP/1.1\r\nHost: {0}\r\nContent-Length: 100000\r\n\r\nabc")]
    [InlineData("POST /api/study-readings HTTP/1.1\r\nHost: {0}\r\nContent-Type: multipart/form-data; boundary=b\r\nContent-Length: 100000\r\n\r\n--b\r\nContent-Disposition: form-data; name=f; filename=f.png\r\n\r\nabc")]
    [InlineData("GET /api/health HTTP/1.1\r\nHost: {0}\r\nX-Never-Ends: a")]
    public async Task ARequestThatHardlyArrives_IsGivenUp(string start)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, service.Address.Port);
        var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(string.Format(System.Globalization.CultureInfo.InvariantCulture, start, service.Address.Authority)));
        // A byte now and then keeps the connection busy, as slow attacks do.
        using var stop = new CancellationTokenSource();
        var drip = Task.Run(async () =>
        {
            while (!stop.IsCancellationRequested)
            {
                await Task.Delay(200);
                await stream.WriteAsync("a"u8.ToArray());
            }
        });

        var answer = new byte[4096];
        var read = await stream.ReadAsync(answer);

        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<IOException>(async () =>
        {
            await drip;
            throw new IOException("The connection was closed before the next byte.");
        });
        Assert.StartsWith("HTTP/1.1 408", Encoding.ASCII.GetString(answer, 0, read), StringComparison.Ordinal);
        Assert.Equal("up", (await service.JsonAsync(HttpMethod.Get, "/api/health")).GetProperty("status").GetString());
    }

    [Fact]
    public void OffLoopback_AToken_IsNeeded() => Assert.Throws<ArgumentException>(() => ElbowService.Create(
        new ServiceOptions { Address = IPAddress.Any }, new Cli.Serving.FilmDesk(null), service.Store));
}
