using ElbowAssist.Store;
using ElbowAssist.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace ElbowAssist.Fuzzing.Service;

/// <summary>The service's own routes, called as the server calls them once it has found one, without a socket between.</summary>
internal static class Routes
{
    private static readonly Lazy<(WebApplication App, Desktop Desktop)> Running = new(() =>
    {
        var store = StudyStore.Open(":memory:");
        var app = ElbowService.Create(new ServiceOptions { MaxRequestBytes = 1 << 20, Workers = 1 }, new SampleDesk(), store);
        return (app, new Desktop(app.Services, store));
    });

    /// <summary>Routes that take a body or a query, by the name of their target. New ones go to the end.</summary>
    public static IReadOnlyList<(string Name, string Method, string Pattern)> All { get; } =
    [
        ("http-reading", "POST", "/api/readings"),
        ("http-study-reading", "POST", "/api/study-readings"),
        ("http-measurements", "POST", "/api/measurements"),
        ("http-reading-again", "GET", "/api/readings/{key}"),
        ("http-study-reading-again", "GET", "/api/study-readings/{key}"),
        ("http-study", "POST", "/api/studies"),
        ("http-film", "POST", "/api/studies/{study}/films"),
        ("http-question", "POST", "/api/studies/{study}/question"),
        ("http-words", "POST", "/api/studies/{study}/films/{film}/words"),
        ("http-answers", "POST", "/api/studies/{study}/answers"),
        ("http-shown", "POST", "/api/studies/{study}/shown"),
        ("http-prompt", "POST", "/api/studies/{study}/prompts/{code}"),
        ("http-outcome", "POST", "/api/studies/{study}/outcome"),
        ("http-line", "POST", "/api/studies/{study}/films/{film}/lines"),
        ("http-landmark-tried", "POST", "/api/studies/{study}/films/{film}/landmarks/{name}/try"),
        ("http-landmark", "PUT", "/api/studies/{study}/films/{film}/landmarks/{name}"),
        ("http-case", "POST", "/api/cases"),
        ("http-lines", "POST", "/api/studies/{study}/lines.json"),
        ("http-archive-query", "GET", "/api/archive/studies"),
        ("http-archive-film", "POST", "/api/studies/{study}/films/archived"),
        ("http-practice", "POST", "/api/practice"),
        ("http-practice-answer", "POST", "/api/practice/{film}/answer"),
        ("http-hand-answer", "POST", "/api/practice/hand/{film}/answer"),
    ];

    /// <summary>Routes of the service that take a body or a query and are no target, which is a fault of this list.</summary>
    public static IEnumerable<string> Missing() => Running.Value.App is IEndpointRouteBuilder routes
        ? routes.DataSources.SelectMany(s => s.Endpoints).OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<IExcludeFromDescriptionMetadata>() is not { ExcludeFromDescription: true })
            .Where(e => e.Metadata.GetMetadata<IAcceptsMetadata>() is not null || e.Metadata.GetOrderedMetadata<IParameterBindingMetadata>().Any(p => IsQuery(e, p)))
            .Select(e => $"{e.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods[0]} {Pattern(e)}")
            .Except(All.Select(r => $"{r.Method} {r.Pattern}"), StringComparer.Ordinal)
        : [];

    /// <summary>Calls a route with an input.</summary>
    /// <exception cref="InvalidOperationException">The route answers with a failure of its own.</exception>
    public static void Call(string method, string pattern, byte[] input)
    {
        if (Request.Parse(input) is { } request)
        {
            CallAsync(method, pattern, request).GetAwaiter().GetResult();
        }
    }

    private static async Task CallAsync(string method, string pattern, Request request)
    {
        var (app, desktop) = Running.Value;
        var endpoint = ((IEndpointRouteBuilder)app).DataSources.SelectMany(s => s.Endpoints).OfType<RouteEndpoint>()
            .Single(e => Pattern(e) == pattern && e.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods.Contains(method));
        await using var scope = app.Services.CreateAsyncScope();
        var context = new DefaultHttpContext { RequestServices = scope.ServiceProvider };
        context.Features.Set<IHttpRequestBodyDetectionFeature>(new HasBody(request.Body.Length > 0));
        context.Request.Method = method;
        request.Fill(context.Request);
        // A film to practise on takes a second to simulate, which is no parser's: its caller has gone by then.
        context.RequestAborted = new CancellationToken(canceled: pattern == "/api/practice");
        await desktop.LayAsync();
        foreach (var parameter in endpoint.RoutePattern.Parameters)
        {
            context.Request.RouteValues[parameter.Name] = desktop.ValueOf(pattern, parameter.Name) ?? request.Value;
        }

        try
        {
            await endpoint.RequestDelegate!(context);
        }
        catch (BadHttpRequestException)
        {
            context.Response.StatusCode = StatusCodes.Status400BadRequest; // as the service answers to it
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            context.Abort();
        }

        await desktop.ClearAsync();
        if (context.Response.StatusCode >= StatusCodes.Status500InternalServerError)
        {
            throw new InvalidOperationException(FormattableString.Invariant($"{method} {pattern} answers with {context.Response.StatusCode}."));
        }
    }

    private static string Pattern(RouteEndpoint endpoint) => "/" + endpoint.RoutePattern.RawText!.Trim('/');

    private static bool IsQuery(RouteEndpoint endpoint, IParameterBindingMetadata parameter) =>
        endpoint.RoutePattern.GetParameter(parameter.Name) is null && (Nullable.GetUnderlyingType(parameter.ParameterInfo.ParameterType) ?? parameter.ParameterInfo.ParameterType) is var type &&
        (type == typeof(string) || type.IsPrimitive || type == typeof(DateOnly) || parameter.ParameterInfo.IsDefined(typeof(AsParametersAttribute), false));

    private sealed record HasBody(bool CanHaveBody) : IHttpRequestBodyDetectionFeature;
}
