using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Exchange.Fhir;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Web.Guard;
using ElbowAssist.Web.Problems;
using ElbowAssist.Web.Studies;
using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Readings;

/// <summary>A study with the films it was put together from.</summary>
internal sealed record ReadStudy(Study Study, IReadOnlyList<ReadFilm> Films);

/// <summary>A study in the format a program asks for.</summary>
internal static class StudyFormats
{
    private static readonly string[] Known = ["json", "html", "text", "fhir", "zip"];

    /// <summary>The sentence where a format cannot be given, or null.</summary>
    public static string? Wrong(string? format, string? patient) => format switch
    {
        null => null,
        "fhir" => ReadingFormats.WrongPatient(patient),
        "zip" when patient is not null => ReadingFormats.WrongPatient(patient),
        _ when Known.Contains(format, StringComparer.Ordinal) => null,
        _ => $"format is one of {string.Join(", ", Known)}.",
    };

    public static IResult Of(ReadStudy read, string? format, string? patient, HttpResponse response, TimeProvider clock)
    {
        var (study, films) = read;
        if (format is not (null or "json") && study.ExportIsStopped)
        {
            return Problem.NotYet("study.contradicted", string.Join(' ', study.Conflicts.Where(c => c.StopsExport).Select(c => c.Text)));
        }

        switch (format ?? "json")
        {
            case "html":
                response.Headers.ContentSecurityPolicy = AnswerHeaders.Report;
                return Results.Bytes(StudyReport.Html(study, films.ToDictionary(f => f.Name, f => f.Picture, StringComparer.Ordinal)), "text/html; charset=utf-8");
            case "text":
                return Results.Text(StudyReport.Text(study), "text/plain", Encoding.UTF8);
            case "fhir":
                return Results.Bytes(Bundle(films, patient!, clock.GetLocalNow()), "application/fhir+json");
            case "zip":
                return Results.Bytes(StudyFiles.Zip(StudyFiles.Of(study, films, patient, clock)), "application/zip", "elbow-study.zip");
            default:
                return Results.Bytes(StudyJson.Write(study), "application/json");
        }
    }

    // The bundles of the films stay whole: within each, resources refer to one another by addresses that repeat.
    private static byte[] Bundle(IReadOnlyList<ReadFilm> films, string patient, DateTimeOffset made) => JsonSerializer.SerializeToUtf8Bytes(new JsonObject
    {
        ["resourceType"] = "Bundle",
        ["type"] = "collection",
        ["entry"] = new JsonArray(
        [
            .. films.Select(f => new JsonObject
            {
                ["fullUrl"] = $"urn:uuid:{Guid.ParseExact(f.Reading.Image.Sha256[..32], "N"):D}",
                ["resource"] = JsonNode.Parse(FhirBundle.Write(f.Reading, patient, made, f.Dicom)),
            }),
        ]),
    });
}
