using System.Globalization;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Films;

/// <summary>
/// Pixel spacing with its provenance (PS3.3 10.7.1.3): Pixel Spacing where it is calibrated, else Imager Pixel Spacing
/// brought to the patient by the magnification factor, else what is left, named for what it is.
/// </summary>
internal static class SpacingReader
{
    private const double Tolerance = 0.01;

    public static DicomSpacing Read(DicomDataset film, List<Reason> conflicts)
    {
        var pixel = Pair(film, Tag.PixelSpacing);
        var imager = Pair(film, Tag.ImagerPixelSpacing);
        if (pixel is var (row, column))
        {
            if (film.Text(Tag.PixelSpacingCalibrationType) is "GEOMETRY" or "FIDUCIAL")
            {
                var type = film.Text(Tag.PixelSpacingCalibrationType) == "GEOMETRY" ? "geometry" : "fiducial";
                return Of(row, column, $"dicom: Pixel Spacing, calibrated by {type}", true);
            }

            if (imager is var (imagerRow, imagerColumn) && !(Alike(row, imagerRow) && Alike(column, imagerColumn)))
            {
                return Of(row, column, "dicom: Pixel Spacing, corrected for magnification", true);
            }
        }

        if (imager is var (detectorRow, detectorColumn))
        {
            return Magnification(film, conflicts) is { } factor
                ? Of(
                    detectorRow / factor,
                    detectorColumn / factor,
                    string.Create(CultureInfo.InvariantCulture, $"dicom: Imager Pixel Spacing, divided by magnification {factor:0.###}"),
                    true)
                : Of(detectorRow, detectorColumn, "dicom: Imager Pixel Spacing, detector plane, magnification not corrected", false);
        }

        if (pixel is var (plainRow, plainColumn))
        {
            return Of(plainRow, plainColumn, "dicom: Pixel Spacing, plane not stated, magnification not corrected", false);
        }

        if (Pair(film, Tag.NominalScannedPixelSpacing) is var (scannedRow, scannedColumn))
        {
            return Of(scannedRow, scannedColumn, "dicom: Nominal Scanned Pixel Spacing, film plane, magnification not corrected", false);
        }

        return film.Numbers(Tag.PixelAspectRatio) is [> 0 and var vertical, > 0 and var horizontal]
            ? new(null, null, vertical / horizontal, "none", false)
            : new(null, null, 1, "none", false);
    }

    private static double? Magnification(DicomDataset film, List<Reason> conflicts)
    {
        var stated = film.Number(Tag.EstimatedRadiographicMagnificationFactor) is { } factor and >= 1 and <= 5 ? factor : (double?)null;
        var ratio = film.Number(Tag.DistanceSourceToDetector) is { } detector and > 0 &&
            film.Number(Tag.DistanceSourceToPatient) is { } patient and > 0 && detector / patient is >= 1 and <= 5
            ? detector / patient
            : (double?)null;
        if (stated is { } s && ratio is { } r && Math.Abs(s - r) > Tolerance * r)
        {
            conflicts.Add(new Reason("magnification-contradicted", "The file states a magnification factor that its distances contradict; the stated factor was used."));
        }

        return stated ?? ratio;
    }

    private static (double Row, double Column)? Pair(DicomDataset film, Tag tag) =>
        film.Numbers(tag) is [> 0.001 and < 10 and var row, > 0.001 and < 10 and var column] ? (row, column) : null;

    private static bool Alike(double a, double b) => Math.Abs(a - b) <= 1e-6 * Math.Max(a, b);

    private static DicomSpacing Of(double row, double column, string source, bool inPatientPlane) =>
        new(row, column, row / column, source, inPatientPlane);
}
