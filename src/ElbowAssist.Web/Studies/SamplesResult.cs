using System.Globalization;
using System.Runtime.InteropServices;
using ElbowAssist.Imaging;
using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Studies;

/// <summary>Samples of a film as they are, 16 bits each, little-endian; what is needed to show them is in the headers.</summary>
internal sealed class SamplesResult(DisplaySamples samples, Radiograph film) : IResult
{
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        ArgumentNullException.ThrowIfNull(httpContext);
        var headers = httpContext.Response.Headers;
        httpContext.Response.ContentType = "application/octet-stream";
        httpContext.Response.ContentLength = samples.Samples.Length * sizeof(ushort);
        foreach (var (name, value) in new[] { ("Columns", samples.Width), ("Rows", samples.Height), ("Film-Columns", film.Width), ("Film-Rows", film.Height), ("Low", samples.Low), ("High", samples.High) })
        {
            headers["Film-" + name.Replace("Film-", "Original-", StringComparison.Ordinal)] = value.ToString(CultureInfo.InvariantCulture);
        }

        var bytes = MemoryMarshal.AsBytes(samples.Samples.Span).ToArray();
        await httpContext.Response.Body.WriteAsync(bytes, httpContext.RequestAborted).ConfigureAwait(false);
    }
}
