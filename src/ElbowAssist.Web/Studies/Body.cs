using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Studies;

/// <summary>The body of a request, up to a limit.</summary>
internal static class Body
{
    /// <exception cref="BadHttpRequestException">Larger than the limit, or slower than the server waits.</exception>
    public static async Task<byte[]> ReadAsync(HttpRequest request, long limit)
    {
        var expected = request.ContentLength ?? 0;
        if (expected > limit)
        {
            throw new BadHttpRequestException("The request is too large.", StatusCodes.Status413PayloadTooLarge);
        }

        return await ReadAsync(request.Body, limit, request.HttpContext.RequestAborted, (int)expected).ConfigureAwait(false);
    }

    /// <exception cref="BadHttpRequestException">Larger than the limit, or slower than the server waits.</exception>
    public static async Task<byte[]> ReadAsync(Stream body, long limit, CancellationToken cancellation, int expected = 0)
    {
        using var buffer = new MemoryStream(expected);
        var chunk = new byte[81920];
        int read;
        while ((read = await body.ReadAsync(chunk, cancellation).ConfigureAwait(false)) > 0)
        {
            if (buffer.Length + read > limit)
            {
                throw new BadHttpRequestException("The request is too large.", StatusCodes.Status413PayloadTooLarge);
            }

            buffer.Write(chunk, 0, read);
        }

        return buffer.ToArray();
    }
}
