using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Films;

/// <summary>Side, view and body part as a file states them.</summary>
internal static class ProjectionReader
{
    private static readonly HashSet<string> FittingBodyParts = new(StringComparer.OrdinalIgnoreCase)
    {
        "ELBOW", "EXTREMITY", "ARM", "FOREARM", "HUMERUS", "UP_EXM", "UPPER EXTREMITY", "UPPERARM", "UP EXM",
    };

    public static Side Side(DicomDataset film, List<Reason> conflicts)
    {
        var (image, series) = (SideOf(film.Text(Tag.ImageLaterality)), SideOf(film.Text(Tag.Laterality)));
        if (image != Anatomy.Side.Unknown && series != Anatomy.Side.Unknown && image != series)
        {
            conflicts.Add(new Reason("side-contradicted", "The file states two different sides; state the side yourself."));
            return Anatomy.Side.Unknown;
        }

        return image != Anatomy.Side.Unknown || film.Text(Tag.ImageLaterality) is "B" or "U" ? image : series;
    }

    /// <summary>View Code Sequence (CID 4010) before View Position (PS3.3 C.8.11.5.1.3).</summary>
    public static View View(DicomDataset film, List<Reason> conflicts)
    {
        var coded = film.Items(Tag.ViewCodeSequence) is [var code, ..]
            ? code.Text(Tag.CodeValue) switch
            {
                "399067008" or "399352003" or "399260004" or "R-10236" or "R-10232" or "R-10228" => Anatomy.View.Lateral,
                "399348003" or "R-10206" => Anatomy.View.Ap,
                "399182000" => Anatomy.View.Oblique,
                _ => Anatomy.View.Unknown,
            }
            : Anatomy.View.Unknown;
        var positioned = film.Text(Tag.ViewPosition)?.ToUpperInvariant() switch
        {
            "AP" or "PA" => Anatomy.View.Ap,
            "LL" or "RL" or "LLD" or "RLD" or "LAT" or "LATERAL" or "LM" or "ML" => Anatomy.View.Lateral,
            "LLO" or "RLO" or "LAO" or "RAO" or "LPO" or "RPO" or "OBL" or "OBLIQUE" => Anatomy.View.Oblique,
            _ => Anatomy.View.Unknown,
        };
        if (coded != Anatomy.View.Unknown && positioned != Anatomy.View.Unknown && coded != positioned)
        {
            conflicts.Add(new Reason("view-contradicted", "The file states two different views; neither was taken."));
            return Anatomy.View.Unknown;
        }

        return coded != Anatomy.View.Unknown ? coded : positioned;
    }

    public static void CheckBodyPart(DicomDataset film, List<Reason> conflicts)
    {
        if (film.Text(Tag.BodyPartExamined) is { } part && !FittingBodyParts.Contains(part))
        {
            conflicts.Add(new Reason("body-part-differs", "The file states a body part other than the elbow; what the image shows decides."));
        }
    }

    private static Side SideOf(string? laterality) => laterality switch
    {
        "L" => Anatomy.Side.Left,
        "R" => Anatomy.Side.Right,
        _ => Anatomy.Side.Unknown,
    };
}
