using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Films;

/// <summary>
/// The image object a reading is about: what reports and presentation states must copy from it (patient, study,
/// references). It holds identifiers; keep it out of logs.
/// </summary>
public sealed class DicomSource
{
    internal DicomSource(DicomDataset film) => Dataset = film;

    /// <summary>Study Instance UID.</summary>
    public string StudyInstanceUid => Dataset.Text(Tag.StudyInstanceUid)!;

    /// <summary>Series Instance UID of the image.</summary>
    public string SeriesInstanceUid => Dataset.Text(Tag.SeriesInstanceUid)!;

    /// <summary>SOP Class UID of the image.</summary>
    public string SopClassUid => Dataset.Text(Tag.SopClassUid)!;

    /// <summary>SOP Instance UID of the image.</summary>
    public string SopInstanceUid => Dataset.Text(Tag.SopInstanceUid)!;

    /// <summary>The header of the image without its pixels.</summary>
    internal DicomDataset Dataset { get; }

    /// <summary>The source of a film.</summary>
    /// <exception cref="DicomFormatException">One of the four identifiers is missing or invalid.</exception>
    internal static DicomSource Of(DicomDataset film)
    {
        Tag[] required = [Tag.StudyInstanceUid, Tag.SeriesInstanceUid, Tag.SopClassUid, Tag.SopInstanceUid];
        return required.All(tag => Uids.IsValid(film.Text(tag)))
            ? new(new DicomDataset(film.Elements.Where(e => e.Tag != Tag.PixelData)))
            : throw DicomFormatException.Damaged($"its study, series or image identifier is missing or invalid");
    }
}
