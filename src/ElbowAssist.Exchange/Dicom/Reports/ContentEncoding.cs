using System.Text;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>Content items to and from data sets.</summary>
internal static class ContentEncoding
{
    /// <summary>Adds the attributes of an item; the root has no relationship.</summary>
    public static void Write(ContentItem item, DatasetBuilder target)
    {
        var encoding = target.Encoding;
        target.Text(Tag.ValueType, item.ValueType);
        if (item.Concept is { } concept)
        {
            target.Sequence(Tag.ConceptNameCodeSequence, concept.Encode(encoding));
        }

        switch (item.ValueType)
        {
            case "CONTAINER":
                target.Text(Tag.ContinuityOfContent, "SEPARATE");
                break;
            case "CODE":
                target.Sequence(Tag.ConceptCodeSequence, item.Code!.Encode(encoding));
                break;
            case "TEXT":
                target.Text(Tag.TextValue, item.Text!);
                break;
            case "UIDREF":
                target.Text(Tag.Uid, item.Text!);
                break;
            case "PNAME":
                target.Text(Tag.PersonName, item.Text!);
                break;
            case "NUM":
                target.Sequence(Tag.MeasuredValueSequence, new DatasetBuilder(encoding)
                    .Decimal(Tag.NumericValue, item.Number!.Value)
                    .Sequence(Tag.MeasurementUnitsCodeSequence, item.Code!.Encode(encoding))
                    .Build());
                break;
            case "SCOORD":
                target.Text(Tag.GraphicType, item.Graphic!)
                    .Float(Tag.GraphicData, [.. item.Points.SelectMany(p => new[] { p.X, p.Y })]);
                break;
            case "IMAGE":
                target.Sequence(Tag.ReferencedSopSequence, new DatasetBuilder(Encoding.ASCII)
                    .Text(Tag.ReferencedSopClassUid, item.Image!.Value.SopClassUid)
                    .Text(Tag.ReferencedSopInstanceUid, item.Image!.Value.SopInstanceUid)
                    .Build());
                break;
            default:
                throw new NotSupportedException($"Content items of type {item.ValueType} are never written.");
        }

        if (item.Children.Count > 0)
        {
            target.Sequence(Tag.ContentSequence, [.. item.Children.Select(child => Child(child, encoding))]);
        }
    }

    /// <summary>Reads an item and everything below it; what is missing or foreign is left out, not refused.</summary>
    public static ContentItem Read(DicomDataset item)
    {
        var type = item.Text(Tag.ValueType) ?? "";
        var measured = item.Items(Tag.MeasuredValueSequence) is [var value, ..] ? value : null;
        var coordinates = item.Numbers(Tag.GraphicData);
        var image = item.Items(Tag.ReferencedSopSequence) is [var reference, ..] ? reference : null;
        return new()
        {
            ValueType = type,
            Relationship = item.Text(Tag.RelationshipType) ?? "",
            Concept = Code.Read(item, Tag.ConceptNameCodeSequence),
            Code = type == "NUM" && measured is not null
                ? Code.Read(measured, Tag.MeasurementUnitsCodeSequence)
                : Code.Read(item, Tag.ConceptCodeSequence),
            Text = item.Text(Tag.TextValue) ?? item.Text(Tag.Uid) ?? item.Text(Tag.PersonName),
            Number = measured?.Number(Tag.NumericValue),
            Graphic = item.Text(Tag.GraphicType),
            Points = [.. Enumerable.Range(0, coordinates.Count / 2).Select(i => new Point(coordinates[2 * i], coordinates[(2 * i) + 1]))],
            Image = image?.Text(Tag.ReferencedSopClassUid) is { } sopClass && image.Text(Tag.ReferencedSopInstanceUid) is { } sopInstance
                ? (sopClass, sopInstance)
                : null,
            Children = [.. item.Items(Tag.ContentSequence).Select(Read)],
        };
    }

    private static DicomDataset Child(ContentItem item, Encoding encoding)
    {
        var builder = new DatasetBuilder(encoding).Text(Tag.RelationshipType, item.Relationship);
        Write(item, builder);
        return builder.Build();
    }
}
