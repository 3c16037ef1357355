using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Fhir;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Web.Problems;
using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Readings;

/// <summary>A reading in the format a program asks for.</summary>
internal static class ReadingFormats
{
    private static readonly string[] Known = ["json", "svg", "png", "coco", "fhir", "sr", "gsps"];

    /// <summary>The sentence where a format cannot be given, or null.</summary>
    public static string? Wrong(string? format, string? patient) => format switch
    {
        null => null,
        "fhir" => WrongPatient(patient),
        _ when Known.Contains(format, StringComparer.Ordinal) => null,
        _ => $"format is one of {string.Join(", ", Known)}.",
    };

    /// <summary>The sentence where a reference to a patient cannot be used, or null.</summary>
    public static string? WrongPatient(string? patient) => patient is { Length: > 0 and <= 200 } && patient.All(c => char.IsAsciiLetterOrDigit(c) || "/.:-_|".Contains(c, StringComparison.Ordinal))
        ? null
        : "For FHIR say patient, the reference to the patient in the receiving system, as Patient/123.";

    public static IResult Of(ReadFilm film, string? format, string? patient, TimeProvider clock)
    {
        var reading = film.Reading;
        switch (format ?? "json")
        {
            case "svg":
                return Results.Bytes(OverlaySvg.Write(reading), "image/svg+xml");
            case "png":
                return Results.Bytes(OverlayPng.Write(reading, new OverlayOptions { Film = film.Picture }), "image/png");
            case "coco":
                return Results.Bytes(
                    CocoKeypoints.Write([new CocoFilm(reading.Image.File, reading.Image.Width, reading.Image.Height, reading.View.Name, reading.Landmarks)]), "application/json");
            case "sr" or "gsps" when film.Dicom is null:
                return Problem.NotYet("not-dicom", "The film is no DICOM object, so there is nothing to report on; send the DICOM file.");
            case "sr" or "gsps" or "fhir" when IsContradicted(film):
                return Problem.NotYet("side-contradicted", "The side is contradicted, so nothing is exported; state it with side=left or side=right.");
            case "fhir":
                return Results.Bytes(FhirBundle.Write(reading, patient!, clock.GetLocalNow(), film.Dicom), "application/fhir+json");
            case "sr":
                return Results.Bytes(StructuredReport.Write(reading, film.Dicom!, new ReportOptions(clock.GetLocalNow())), "application/dicom");
            case "gsps":
                return Results.Bytes(PresentationState.Write(reading, film.Dicom!, clock.GetLocalNow()), "application/dicom");
            default:
                return Results.Bytes(ReadingJson.Write(reading), "application/json");
        }
    }

    private static bool IsContradicted(ReadFilm film) => film.Reading.Side == Anatomy.Side.Unknown && film.Reading.Reasons.Any(r => r.Code == "side-contradicted");
}
