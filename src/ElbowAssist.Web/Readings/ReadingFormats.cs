using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Web.Problems;
using Microsoft.AspNetCore.Http;

namespace ElbowAssist.Web.Readings;

/// <summary>A reading in the format a program asks for.</summary>
internal static class ReadingFormats
{
    private static readonly string[] Known = ["json", "svg", "png", "sr", "gsps", "coco"];

    /// <summary>The sentence where a format is not one of these, or null.</summary>
    public static string? Unknown(string? format) =>
        format is null || Known.Contains(format, StringComparer.Ordinal) ? null : $"format is one of {string.Join(", ", Known)}.";

    public static IResult Of(ShelvedReading shelved, string? format, TimeProvider clock)
    {
        var reading = shelved.Reading;
        switch (format ?? "json")
        {
            case "svg":
                return Results.Bytes(OverlaySvg.Write(reading), "image/svg+xml");
            case "png":
                return Results.Bytes(OverlayPng.Write(reading, new OverlayOptions { Film = shelved.Picture }), "image/png");
            case "coco":
                return Results.Bytes(
                    CocoKeypoints.Write([new CocoFilm(reading.Image.File, reading.Image.Width, reading.Image.Height, reading.View.Name, reading.Landmarks)]), "application/json");
            case "sr" or "gsps" when shelved.Dicom is null:
                return Problem.NotYet("not-dicom", "The film is no DICOM object, so there is nothing to report on; send the DICOM file.");
            case "sr" or "gsps" when reading.Reasons.Any(r => r.Code == "side-contradicted") && reading.Side == Anatomy.Side.Unknown:
                return Problem.NotYet("side-contradicted", "The side is contradicted, so nothing is exported; state it with side=left or side=right.");
            case "sr":
                return Results.Bytes(StructuredReport.Write(reading, shelved.Dicom!, new ReportOptions(clock.GetLocalNow())), "application/dicom");
            case "gsps":
                return Results.Bytes(PresentationState.Write(reading, shelved.Dicom!, clock.GetLocalNow()), "application/dicom");
            default:
                return Results.Bytes(ReadingJson.Write(reading), "application/json");
        }
    }
}
