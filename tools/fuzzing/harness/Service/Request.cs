using System.Text;
using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Fuzzing.Service;

/// <summary>
/// A request as an input writes it: what stands for the last value of the route and the query (<c>name?query</c>), the
/// headers a line each, an empty line, the body. What a server would not let through is left out of the head.
/// </summary>
internal sealed record Request(string Value, string Query, IReadOnlyList<(string Name, string Value)> Headers, byte[] Body)
{
    private const int LongestHead = 8 << 10;

    /// <summary>The request, or null where the head has no end or is longer than a server takes.</summary>
    public static Request? Parse(byte[] input)
    {
        var end = input.AsSpan().IndexOf("\n\n"u8);
        if (end is < 0 or > LongestHead)
        {
            return null;
        }

        var head = string.Concat(Encoding.Latin1.GetString(input, 0, end).Where(c => c is '\n' or (>= ' ' and <= '~'))).Split('\n');
        var mark = head[0].IndexOf('?', StringComparison.Ordinal);
        return new(
            Uri.UnescapeDataString(mark < 0 ? head[0] : head[0][..mark]),
            mark < 0 ? "" : head[0][mark..],
            [.. from line in head.Skip(1)
                let colon = line.IndexOf(':', StringComparison.Ordinal)
                where colon > 0
                select (line[..colon].Trim(), line[(colon + 1)..].Trim())],
            input[(end + 2)..]);
    }

    /// <summary>Puts it into a context; bodies are JSON where nothing else is said.</summary>
    public void Fill(HttpRequest request)
    {
        request.ContentType = "application/json";
        foreach (var (name, value) in Headers.Where(h => h.Name is "Content-Type" or "Reader"))
        {
            request.Headers[name] = value;
        }

        request.QueryString = new QueryString(Query);
        request.ContentLength = Body.Length;
        request.Body = new MemoryStream(Body);
    }
}
