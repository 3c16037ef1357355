using System.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web.Watching;

/// <summary>
/// An activity for each request, named by its route. The address itself, which may hold a file name or an identifier, is
/// not among what it carries.
/// </summary>
internal sealed class RequestTrace(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context)
    {
        if (!Telemetry.Source.HasListeners())
        {
            await next(context).ConfigureAwait(false);
            return;
        }

        _ = ActivityContext.TryParse(context.Request.Headers.TraceParent, context.Request.Headers.TraceState, isRemote: true, out var caller);
        var route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "none";
        // The framework's own activity is not exported: below it this one would be dropped.
        Activity.Current = null;
        using var activity = Telemetry.Source.StartActivity($"{context.Request.Method} {route}", ActivityKind.Server, caller);
        activity?.SetTag("http.request.method", context.Request.Method);
        activity?.SetTag("http.route", route);
        await next(context).ConfigureAwait(false);
        activity?.SetTag("http.response.status_code", context.Response.StatusCode);
        if (context.Response.StatusCode >= StatusCodes.Status500InternalServerError)
        {
            activity?.SetStatus(ActivityStatusCode.Error);
        }
    }
}
