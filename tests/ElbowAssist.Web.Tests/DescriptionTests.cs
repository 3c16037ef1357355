using System.Text.RegularExpressions;
using Microsoft.OpenApi;
using Microsoft.OpenApi.Reader;

namespace ElbowAssist.Web.Tests;

/// <summary>The description of the service says what the service does; every other test holds its answers against it, too.</summary>
public sealed partial class DescriptionTests(RunningService service) : IClassFixture<RunningService>
{
    [Fact]
    public async Task EveryRoute_IsDescribed_AndNothingElse()
    {
        var description = await service.JsonAsync(HttpMethod.Get, ElbowService.OpenApiPath);
        Assert.StartsWith("3.1", description.GetProperty("openapi").GetString(), StringComparison.Ordinal);
        var described = from path in description.GetProperty("paths").EnumerateObject()
                        from operation in path.Value.EnumerateObject()
                        select (operation.Name.ToUpperInvariant(), path.Name);
        var routes = service.Routes.Where(r => r.Pattern != ElbowService.OpenApiPath).Select(r => (r.Method, Parameter().Replace(r.Pattern, "{${name}}")));
        Assert.Equal(routes.Distinct().Order(), described.Order());
    }

    [Fact]
    public async Task EveryOperation_SaysWhatItIs_AndHowItRefuses()
    {
        var description = await service.JsonAsync(HttpMethod.Get, ElbowService.OpenApiPath);
        foreach (var operation in description.GetProperty("paths").EnumerateObject().SelectMany(p => p.Value.EnumerateObject()))
        {
            Assert.True(operation.Value.GetProperty("summary").GetString()!.Length > 3, operation.Value.GetRawText());
            Assert.Equal("application/problem+json", operation.Value.GetProperty("responses").GetProperty("default").GetProperty("content").EnumerateObject().Single().Name);
        }
    }

    /// <summary>Read by another's parser of OpenAPI (Microsoft.OpenApi) with its own rules.</summary>
    [Fact]
    public async Task AnotherParser_FindsNothingWrong()
    {
        using var stream = new MemoryStream(await service.Client.GetByteArrayAsync(ElbowService.OpenApiPath));
        var read = await OpenApiDocument.LoadAsync(stream, "json", new OpenApiReaderSettings());
        Assert.Empty(read.Diagnostic!.Errors.Select(e => e.ToString()));
        Assert.Equal(OpenApiSpecVersion.OpenApi3_1, read.Diagnostic.SpecificationVersion);
        Assert.NotEmpty(read.Document!.Paths);
    }

    [GeneratedRegex(@"\{(?<name>\w+)(:\w+)?\}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Parameter();
}
