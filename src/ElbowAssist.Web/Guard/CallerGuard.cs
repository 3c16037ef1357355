using System.Net;
using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Web.Problems;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace ElbowAssist.Web.Guard;

/// <summary>
/// Who may call: the host named must be this machine or one allowed, so that no foreign name can be pointed at it; a page
/// of another origin must be allowed by name; and off loopback every call carries the token.
/// </summary>
internal sealed class CallerGuard(RequestDelegate next, ServiceOptions options)
{
    private const string Cookie = "elbowassist-token";

    public async Task InvokeAsync(HttpContext context)
    {
        if (!HostIsKnown(context.Request.Host))
        {
            await Problem.WriteAsync(context, StatusCodes.Status421MisdirectedRequest, "foreign-host", "Wrong host",
                "The service does not answer to this host name; call it by the address it printed when it started.").ConfigureAwait(false);
            return;
        }

        var origin = context.Request.Headers.Origin.ToString();
        var own = origin.Length == 0 || string.Equals(origin, $"{context.Request.Scheme}://{context.Request.Host}", StringComparison.OrdinalIgnoreCase);
        var allowed = !own && options.AllowedOrigins.Contains(origin, StringComparer.OrdinalIgnoreCase);
        var crossSite = context.Request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site";
        if ((!own && !allowed) || (own && origin.Length == 0 && crossSite && !IsNavigation(context.Request)))
        {
            await Problem.WriteAsync(context, StatusCodes.Status403Forbidden, "foreign-origin", "Wrong origin",
                "Pages of this origin may not call the service; allow it with --allow-origin if it is yours.").ConfigureAwait(false);
            return;
        }

        if (allowed)
        {
            var headers = context.Response.Headers;
            headers.AccessControlAllowOrigin = origin;
            headers.Vary = HeaderNames.Origin;
            if (HttpMethods.IsOptions(context.Request.Method))
            {
                headers.AccessControlAllowMethods = "GET, POST, PUT, DELETE";
                headers.AccessControlAllowHeaders = "Content-Type, Accept, Prefer, Authorization, Reader, If-None-Match";
                context.Response.StatusCode = StatusCodes.Status204NoContent;
                return;
            }
        }

        if (options.Token is { } token && !HasToken(context, token))
        {
            await Problem.WriteAsync(context, StatusCodes.Status401Unauthorized, "token-missing", "Token missing",
                "Send the token that the service printed when it started, as \"Authorization: Bearer …\", or open the address with it once.").ConfigureAwait(false);
            return;
        }

        await next(context).ConfigureAwait(false);
    }

    // Following a link from elsewhere to the page itself is harmless; it changes nothing and nothing can be read back.
    private static bool IsNavigation(HttpRequest request) =>
        HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate" && request.Headers["Sec-Fetch-Dest"] == "document";

    private bool HostIsKnown(HostString host) => host.Host is "localhost" or "127.0.0.1" or "[::1]" ||
        options.AllowedHosts.Contains(host.Host, StringComparer.OrdinalIgnoreCase) ||
        (!IPAddress.IsLoopback(options.Address) && host.Host == options.Address.ToString());

    private static bool HasToken(HttpContext context, string token)
    {
        var bearer = context.Request.Headers.Authorization.ToString();
        if (Same(bearer.StartsWith("Bearer ", StringComparison.Ordinal) ? bearer["Bearer ".Length..] : context.Request.Cookies[Cookie], token))
        {
            return true;
        }

        if (!HttpMethods.IsGet(context.Request.Method) || !Same(context.Request.Query["token"], token))
        {
            return false;
        }

        context.Response.Cookies.Append(Cookie, token, new CookieOptions { HttpOnly = true, SameSite = Microsoft.AspNetCore.Http.SameSiteMode.Strict, IsEssential = true });
        return true;
    }

    private static bool Same(string? given, string token) => given is not null &&
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(token));
}
