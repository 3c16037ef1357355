using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Guard;

/// <summary>Headers that keep every answer to this origin: no foreign script, frame, font or picture, and no copy in a cache.</summary>
internal sealed class AnswerHeaders(RequestDelegate next)
{
    /// <summary>The policy of the page: everything from the program itself, and no style or script within a document.</summary>
    public const string Page =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; " +
        "frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>The policy of a report: a document with its own style and pictures that runs nothing and loads nothing.</summary>
    public const string Report =
        "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'self'; sandbox allow-modals";

    public Task InvokeAsync(HttpContext context)
    {
        context.Response.OnStarting(() =>
        {
            var headers = context.Response.Headers;
            headers.ContentSecurityPolicy = headers.ContentSecurityPolicy.Count == 0 ? Page : headers.ContentSecurityPolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = headers.AccessControlAllowOrigin.Count == 0 ? "same-origin" : "cross-origin";
            headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=()";
            headers.CacheControl = headers.CacheControl.Count == 0 ? "no-store" : headers.CacheControl;
            return Task.CompletedTask;
        });
        return next(context);
    }
}
