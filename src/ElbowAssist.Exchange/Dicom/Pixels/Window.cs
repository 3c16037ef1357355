using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>A VOI window (PS3.3 C.11.2.1.2 and C.11.2.1.3): values of the modality to a brightness from 0 to 1.</summary>
/// <param name="Centre">Window centre.</param>
/// <param name="Width">Window width.</param>
/// <param name="Function">LINEAR, LINEAR_EXACT or SIGMOID.</param>
internal sealed record Window(double Centre, double Width, string Function)
{
    /// <summary>The first window of a film, or null if there is none or it is invalid.</summary>
    public static Window? Of(DicomDataset film)
    {
        if (film.Number(Tag.WindowCenter) is not { } centre || film.Number(Tag.WindowWidth) is not { } width)
        {
            return null;
        }

        var function = film.Text(Tag.VoiLutFunction) ?? "LINEAR";
        var valid = function switch
        {
            "LINEAR" => width >= 1,
            "LINEAR_EXACT" or "SIGMOID" => width > 0,
            _ => false,
        };
        return valid ? new(centre, width, function) : null;
    }

    public double Fraction(double value) => Function switch
    {
        "SIGMOID" => 1 / (1 + Math.Exp(-4 * (value - Centre) / Width)),
        "LINEAR_EXACT" => Math.Clamp(((value - Centre) / Width) + 0.5, 0, 1),
        _ when Width <= 1 => value <= Centre - 0.5 ? 0 : 1,
        _ => Math.Clamp(((value - (Centre - 0.5)) / (Width - 1)) + 0.5, 0, 1),
    };
}
