using System.Globalization;
using System.Text;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Objects;

/// <summary>The part of a header that reports and presentation states share: patient and study of the image, and who made the object.</summary>
internal static class ObjectHeader
{
    public const string Manufacturer = "ElbowAssist project";

    private static readonly Tag[] CopiedOrEmpty =
    [
        Tag.StudyDate, Tag.StudyTime, Tag.AccessionNumber, Tag.ReferringPhysicianName, Tag.PatientName, Tag.PatientId,
        Tag.PatientBirthDate, Tag.PatientSex, Tag.StudyId,
    ];

    private static readonly Tag[] CopiedIfPresent = [Tag.IssuerOfPatientId, Tag.PatientAge, Tag.StudyDescription];

    /// <summary>
    /// Starts an object in the study of an image. Text becomes UTF-8, unless the image uses code extensions: then its
    /// bytes and its character set are kept and our own text is ASCII.
    /// </summary>
    public static DatasetBuilder Start(DicomSource source, ToolIdentity tool, string sopClassUid, string modality, string seriesDescription)
    {
        var film = source.Dataset;
        var decodable = film.TextEncoding is not null;
        var builder = new DatasetBuilder(decodable ? Encoding.UTF8 : Encoding.ASCII);
        if (decodable)
        {
            builder.Text(Tag.SpecificCharacterSet, CharacterSets.Utf8);
        }
        else
        {
            builder.Add(film.Find(Tag.SpecificCharacterSet)!);
        }

        foreach (var tag in CopiedOrEmpty.Concat(CopiedIfPresent.Where(t => film.Find(t) is not null)))
        {
            Copy(film, tag, builder, decodable);
        }

        return builder
            .Text(Tag.SopClassUid, sopClassUid)
            .Text(Tag.StudyInstanceUid, source.StudyInstanceUid)
            .Text(Tag.Modality, modality)
            .Text(Tag.SeriesInstanceUid, Uids.FromName(modality, source.SopInstanceUid, tool.Name, tool.Version))
            .Text(Tag.SeriesDescription, seriesDescription)
            .Integer(Tag.InstanceNumber, 1)
            .Text(Tag.Manufacturer, Manufacturer)
            .Text(Tag.ManufacturerModelName, AsciiText.Cut(tool.Name, 64))
            .Text(Tag.SoftwareVersions, AsciiText.Cut(tool.Version, 64))
            .Text(Tag.DeviceSerialNumber, AsciiText.Cut(tool.Version, 64));
    }

    /// <summary>A date as DA.</summary>
    public static string Date(DateTimeOffset time) => time.ToString("yyyyMMdd", CultureInfo.InvariantCulture);

    /// <summary>A time of day as TM.</summary>
    public static string Time(DateTimeOffset time) => time.ToString("HHmmss", CultureInfo.InvariantCulture);

    /// <summary>An image by class and instance.</summary>
    public static DicomDataset ImageReference(DicomSource source) => new DatasetBuilder(Encoding.ASCII)
        .Text(Tag.ReferencedSopClassUid, source.SopClassUid)
        .Text(Tag.ReferencedSopInstanceUid, source.SopInstanceUid)
        .Build();

    /// <summary>The program and its models as processing equipment (IHE AI Results 6.5.3.1).</summary>
    public static IReadOnlyList<DicomDataset> Equipment(ToolIdentity tool, IReadOnlyList<ModelIdentity> models, Encoding encoding) =>
    [
        Equipment(tool.Name, tool.Version, DeviceUid(tool), encoding),
        .. models.Select(m => Equipment(m.Name, ModelVersion(m), Uids.FromName("model", m.Sha256), encoding)),
    ];

    /// <summary>UID of a release of the program.</summary>
    public static string DeviceUid(ToolIdentity tool) => Uids.FromName("device", tool.Name, tool.Version);

    /// <summary>Version of a model with the beginning of the hash of its file.</summary>
    public static string ModelVersion(ModelIdentity model) =>
        AsciiText.Cut($"{model.Version}+sha256:{(model.Sha256.Length > 12 ? model.Sha256[..12] : model.Sha256)}", 64);

    private static DicomDataset Equipment(string name, string version, string uid, Encoding encoding) => new DatasetBuilder(encoding)
        .Text(Tag.Manufacturer, Manufacturer)
        .Text(Tag.ManufacturerModelName, AsciiText.Cut(name, 64))
        .Text(Tag.DeviceUid, uid)
        .Text(Tag.SoftwareVersions, AsciiText.Cut(version, 64))
        .Sequence(Tag.PurposeOfReferenceCodeSequence, StandardCodes.ProcessingEquipment.Encode(encoding))
        .Build();

    private static void Copy(DicomDataset film, Tag tag, DatasetBuilder builder, bool decodable)
    {
        if (film.Find(tag) is not { Items.Count: 0, Fragments: null } element)
        {
            builder.Empty(tag);
        }
        else if (decodable)
        {
            builder.Text(tag, [.. film.Texts(tag)]);
        }
        else
        {
            builder.Bytes(tag, element.Value.ToArray());
        }
    }
}
