// Reads a DICOM film and writes what a viewer lays over it: an SVG in pixels of the film, and a structured report for the
// archive. Arguments: the film and the folder of models.
using System.Security.Cryptography;
using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Imaging;
using ElbowAssist.Models;
using ElbowAssist.Pipeline;
using ElbowAssist.Reading;

var (path, modelsFolder) = (args[0], args[1]);
var file = await File.ReadAllBytesAsync(path);
var film = new DicomFilmReader().Read(file);
var radiograph = Radiograph.FromPixels(film.Pixels.Span, film.Width, film.Height, new RadiographFacts
{
    FileName = Path.GetFileName(path),
    Sha256 = Convert.ToHexStringLower(SHA256.HashData(file)),
    Format = FilmFormat.Pixels,
    BitDepth = 16,
    // Detector millimetres are magnified by an unknown factor: only those of the patient plane count.
    RowSpacingMm = film.Spacing.InPatientPlane ? film.Spacing.RowMm : null,
    ColumnSpacingMm = film.Spacing.InPatientPlane ? film.Spacing.ColumnMm : null,
    SpacingSource = film.Spacing.Source,
});

using var models = ModelSet.Load(modelsFolder);
var reader = new FilmReader(models, new ToolIdentity("my viewer", "1.0"));
var reading = reader.Read(radiograph, new ReadOptions { Side = film.Side, Patient = film.Patient });

await File.WriteAllBytesAsync(path + ".overlay.svg", OverlaySvg.Write(reading, new OverlayOptions { Legend = false }));
await File.WriteAllBytesAsync(path + ".sr.dcm", StructuredReport.Write(reading, film.Source, new ReportOptions(DateTimeOffset.Now)));
foreach (var measurement in reading.Measurements)
{
    Console.WriteLine($"{measurement.Name}: {measurement.Value?.ToString("0.00") ?? "withheld, " + string.Join(", ", measurement.Reasons)}");
}

Console.WriteLine(reading.CautionText);
