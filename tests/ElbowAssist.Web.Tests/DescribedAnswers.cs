using System.Text.Json;

namespace ElbowAssist.Web.Tests;

/// <summary>Holds every answer of the service against its description: status and kind of content must stand in it.</summary>
internal sealed class DescribedAnswers : DelegatingHandler
{
    // Decided before any route, and described once for all of them.
    private static readonly int[] BeforeRoutes = [204, 400, 401, 403, 405, 408, 413, 415, 421, 500, 503];

    private JsonElement? description;

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var response = await base.SendAsync(request, cancellationToken);
        var path = request.RequestUri!.AbsolutePath;
        if (path.StartsWith("/api/", StringComparison.Ordinal) && path != ElbowService.OpenApiPath)
        {
            await CheckAsync(request, response, cancellationToken);
        }

        return response;
    }

    private async Task CheckAsync(HttpRequestMessage request, HttpResponseMessage response, CancellationToken cancellation)
    {
        if (description is null)
        {
            using var asked = new HttpRequestMessage(HttpMethod.Get, new Uri(request.RequestUri!, ElbowService.OpenApiPath));
            using var told = await base.SendAsync(asked, cancellation);
            description = JsonDocument.Parse(await told.Content.ReadAsStringAsync(cancellation)).RootElement;
        }

        var (status, type, path) = ((int)response.StatusCode, response.Content.Headers.ContentType?.MediaType, request.RequestUri!.AbsolutePath);
        var route = description.Value.GetProperty("paths").EnumerateObject().Where(p => Fits(p.Name, path)).OrderBy(p => p.Name.Count(c => c == '{')).FirstOrDefault();
        if (route.Value.ValueKind == JsonValueKind.Undefined)
        {
            Assert.True(status is 404 || BeforeRoutes.Contains(status), $"{request.Method} {path} is not described, and answers {status}");
            return;
        }

        if (!route.Value.TryGetProperty(request.Method.Method.ToLowerInvariant(), out var operation))
        {
            Assert.Contains(status, BeforeRoutes);
            return;
        }

        var described = operation.GetProperty("responses").TryGetProperty(status.ToString(System.Globalization.CultureInfo.InvariantCulture), out var answer);
        Assert.True(described || BeforeRoutes.Contains(status) || (status == 404 && path.Contains("..", StringComparison.Ordinal)), $"{request.Method} {route.Name} answers {status}, which is not described");
        if (described && answer.TryGetProperty("content", out var content))
        {
            Assert.Contains(type, content.EnumerateObject().Select(c => c.Name.Split(';')[0]));
        }
    }

    private static bool Fits(string pattern, string path)
    {
        var (want, have) = (pattern.Split('/'), path.Split('/'));
        return want.Length == have.Length && want.Zip(have).All(p => p.First.StartsWith('{') || p.First == p.Second);
    }
}
