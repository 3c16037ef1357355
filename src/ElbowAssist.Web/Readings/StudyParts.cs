using System.Text;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Geometry;
using ElbowAssist.Web.Studies;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Net.Http.Headers;

namespace ElbowAssist.Web.Readings;

/// <summary>A film of a study as it was sent, with its sidecar if one came along.</summary>
internal sealed record SentFilm(string Name, byte[] Content, byte[]? Sidecar);

/// <summary>The parts of a multipart body: films, and sidecars named after them.</summary>
internal static class StudyParts
{
    /// <summary>Takes the parts in, in memory only.</summary>
    /// <returns>The films, or the sentence why they cannot be used.</returns>
    /// <exception cref="BadHttpRequestException">Larger than the limit, or slower than the server waits.</exception>
    public static async Task<(IReadOnlyList<SentFilm> Films, string? Wrong)> ReadAsync(HttpRequest request, long limit)
    {
        if (!MediaTypeHeaderValue.TryParse(request.ContentType, out var type) || type.MediaType != "multipart/form-data" || HeaderUtilities.RemoveQuotes(type.Boundary).Value is not { Length: > 0 and <= InputLimits.Boundary } boundary)
        {
            return ([], "Send the films of a study as multipart/form-data, one part with a file name for each.");
        }

        Dictionary<string, byte[]> files = new(StringComparer.Ordinal);
        var reader = new MultipartReader(boundary, request.Body);
        long taken = 0;
        try
        {
            while (await reader.ReadNextSectionAsync(request.HttpContext.RequestAborted).ConfigureAwait(false) is { } part)
            {
                if (!ContentDispositionHeaderValue.TryParse(part.ContentDisposition, out var disposition) ||
                    HeaderUtilities.RemoveQuotes(disposition.FileNameStar.HasValue ? disposition.FileNameStar : disposition.FileName).Value is not { Length: > 0 } given)
                {
                    return ([], "Every part needs a file name.");
                }

                var content = await Body.ReadAsync(part.Body, limit - taken, request.HttpContext.RequestAborted).ConfigureAwait(false);
                taken += content.Length;
                if (files.Count >= 2 * InputLimits.StudyFilms || !files.TryAdd(StudyEndpoints.FileName(given), content))
                {
                    return ([], FormattableString.Invariant($"A study has at most {InputLimits.StudyFilms} films, each with a name of its own."));
                }
            }
        }
        catch (Exception e) when (e is InvalidDataException or IOException and not BadHttpRequestException)
        {
            return ([], "The parts of the body cannot be told apart; send it as multipart/form-data.");
        }

        SentFilm[] films = [.. files.Where(f => !IsSidecar(f.Key)).Select(f => new SentFilm(f.Key, f.Value, files.GetValueOrDefault(f.Key + SidecarJson.Suffix)))];
        return films.Length is 0 or > InputLimits.StudyFilms
            ? ([], FormattableString.Invariant($"A study has one to {InputLimits.StudyFilms} films."))
            : films.FirstOrDefault(f => f.Sidecar is { } said && StudyEndpoints.StatedOrNull(Encoding.UTF8.GetString(said)) is null) is { } odd
                ? ([], $"What is stated of {odd.Name} cannot be used: it must be a sidecar as JSON.")
                : (films, null);
    }

    private static bool IsSidecar(string name) => name.EndsWith(SidecarJson.Suffix, StringComparison.OrdinalIgnoreCase);
}
