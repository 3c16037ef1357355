using System.Reflection;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace ElbowAssist.Web;

/// <summary>The files of the page, which travel within the program.</summary>
internal static class PageFiles
{
    private const string Prefix = "page/";

    private static readonly Dictionary<string, string> Types = new(StringComparer.Ordinal)
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
    };

    public static void Map(IEndpointRouteBuilder routes)
    {
        var assembly = Assembly.GetExecutingAssembly();
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var content = new byte[stream.Length];
            stream.ReadExactly(content);
            var path = name[Prefix.Length..].Replace('\\', '/');
            var tag = $"\"{Convert.ToHexStringLower(SHA256.HashData(content))[..16]}\"";
            var type = Types[Path.GetExtension(path)];
            routes.MapGet(path == "index.html" ? "/" : "/" + path, (HttpContext context) => Send(context, content, type, tag)).ExcludeFromDescription();
        }
    }

    private static IResult Send(HttpContext context, byte[] content, string type, string tag)
    {
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.Headers.ETag = tag;
        return context.Request.Headers.IfNoneMatch == tag ? Results.StatusCode(StatusCodes.Status304NotModified) : Results.Bytes(content, type);
    }
}
