using System.Text;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Objects;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Presentation;

/// <summary>
/// Writes a reading as a Grayscale Softcopy Presentation State. The film's own window and lookup tables are kept, so that
/// the picture under the layers stays as it was. A layer carries no switch in the standard; that the layers are separate
/// lets a viewer turn each off.
/// </summary>
public static class PresentationState
{
    private const int SeriesNumber = 9101;

    private static readonly Tag[] ModalityTransform = [Tag.RescaleIntercept, Tag.RescaleSlope, Tag.RescaleType];

    private static readonly Tag[] VoiTransform = [Tag.WindowCenter, Tag.WindowWidth, Tag.VoiLutFunction];

    /// <summary>The bytes of a DICOM file. The same reading of the same image always has the same SOP Instance UID.</summary>
    /// <param name="reading">The reading; a refused one gives a state that shows why and nothing else.</param>
    /// <param name="source">The image it is about.</param>
    /// <param name="created">When the reading was made.</param>
    public static byte[] Write(FilmReading reading, DicomSource source, DateTimeOffset created)
    {
        var film = source.Dataset;
        var builder = ObjectHeader.Start(source, reading.Tool, Uids.PresentationState, "PR", "ElbowAssist: proposals, second look");
        var layers = GraphicLayers.Of(reading, builder.Encoding);
        builder
            .Integer(Tag.SeriesNumber, SeriesNumber)
            .Text(Tag.Laterality, film.Text(Tag.ImageLaterality) ?? film.Text(Tag.Laterality) ?? "")
            .Text(Tag.ContentLabel, "ELBOWASSIST")
            .Text(Tag.ContentDescription, Wording.Proposal)
            .Text(Tag.ContentCreatorName, "ElbowAssist")
            .Sequence(Tag.ReferencedSeriesSequence, new DatasetBuilder(Encoding.ASCII)
                .Text(Tag.SeriesInstanceUid, source.SeriesInstanceUid)
                .Sequence(Tag.ReferencedImageSequence, ObjectHeader.ImageReference(source))
                .Build())
            .Sequence(Tag.DisplayedAreaSelectionSequence, DisplayedArea(reading))
            .UInt16(Tag.ImageRotation, 0)
            .Text(Tag.ImageHorizontalFlip, "N")
            .Sequence(Tag.GraphicLayerSequence, [.. layers.Select((l, i) => Layer(l, i + 1, builder.Encoding))])
            .Sequence(Tag.GraphicAnnotationSequence, [.. layers.Select(l => Annotation(l, source))])
            .Text(Tag.PresentationLutShape, film.Text(Tag.PhotometricInterpretation) == "MONOCHROME1" ? "INVERSE" : "IDENTITY");
        KeepDisplay(film, builder);
        var content = Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(DatasetWriter.Write(builder.Build())));
        builder
            .Text(Tag.SopInstanceUid, Uids.FromName("presentation", source.SopInstanceUid, content))
            .Text(Tag.PresentationCreationDate, ObjectHeader.Date(created))
            .Text(Tag.PresentationCreationTime, ObjectHeader.Time(created));
        return DicomFile.Write(builder.Build());
    }

    private static void KeepDisplay(DicomDataset film, DatasetBuilder builder)
    {
        if (film.Find(Tag.ModalityLutSequence) is { Items.Count: > 0 } table)
        {
            builder.Add(table);
        }
        else if (film.Number(Tag.RescaleSlope) is not null && film.Number(Tag.RescaleIntercept) is not null)
        {
            builder.Text(Tag.RescaleType, "US");
            CopyPresent(film, ModalityTransform, builder);
        }

        var voi = new DatasetBuilder(builder.Encoding);
        if (film.Find(Tag.VoiLutSequence) is { Items.Count: > 0 } voiTable)
        {
            voi.Add(voiTable);
        }
        else if (film.Number(Tag.WindowCenter) is not null && film.Number(Tag.WindowWidth) is not null)
        {
            CopyPresent(film, VoiTransform, voi);
        }
        else
        {
            return;
        }

        builder.Sequence(Tag.SoftcopyVoiLutSequence, voi.Build());
    }

    private static void CopyPresent(DicomDataset film, IEnumerable<Tag> tags, DatasetBuilder builder)
    {
        foreach (var element in tags.Select(film.Find).OfType<DicomElement>().Where(e => e.Value.Length > 0))
        {
            builder.Add(element);
        }
    }

    private static DicomDataset DisplayedArea(FilmReading reading)
    {
        var area = new DatasetBuilder(Encoding.ASCII)
            .Int32(Tag.DisplayedAreaTopLeftHandCorner, 1, 1)
            .Int32(Tag.DisplayedAreaBottomRightHandCorner, reading.Image.Width, reading.Image.Height)
            .Text(Tag.PresentationSizeMode, "SCALE TO FIT");
        return (reading.Image is { RowSpacingMm: { } row, ColumnSpacingMm: { } column }
            ? area.Decimal(Tag.PresentationPixelSpacing, row, column)
            : area.Integer(Tag.PresentationPixelAspectRatio, 1, 1)).Build();
    }

    private static DicomDataset Layer(GraphicLayer layer, int order, Encoding encoding) => new DatasetBuilder(encoding)
        .Text(Tag.GraphicLayer, layer.Name)
        .Integer(Tag.GraphicLayerOrder, order)
        .UInt16(Tag.GraphicLayerRecommendedDisplayGrayscaleValue, 65535)
        .UInt16(Tag.GraphicLayerRecommendedDisplayCieLabValue, [.. layer.Ink.CieLab])
        .Text(Tag.GraphicLayerDescription, AsciiText.Cut(layer.Description, 64))
        .Build();

    private static DicomDataset Annotation(GraphicLayer layer, DicomSource source)
    {
        var annotation = new DatasetBuilder(Encoding.ASCII)
            .Text(Tag.GraphicLayer, layer.Name)
            .Sequence(Tag.ReferencedImageSequence, ObjectHeader.ImageReference(source));
        if (layer.Graphics.Count > 0)
        {
            annotation.Sequence(Tag.GraphicObjectSequence, layer.Graphics);
        }

        if (layer.Texts.Count > 0)
        {
            annotation.Sequence(Tag.TextObjectSequence, layer.Texts);
        }

        return annotation.Build();
    }
}
