using System.Text;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Dicom.Presentation;

/// <summary>Items of the Graphic Object and Text Object Sequences (PS3.3 C.10.5); coordinates are pixels as in reports.</summary>
internal static class GraphicItems
{
    public static DicomDataset Polyline(IReadOnlyList<Point> points, GraphicInk ink) =>
        Graphic("POLYLINE", points).Text(Tag.GraphicFilled, "N").Sequence(Tag.LineStyleSequence, ink.LineStyle()).Build();

    /// <summary>A point mark alone has no size, so a cross goes with it.</summary>
    public static IEnumerable<DicomDataset> Cross(Point centre, double arm, GraphicInk ink) =>
    [
        Graphic("POINT", [centre]).Build(),
        Polyline([new Point(centre.X - arm, centre.Y), new Point(centre.X + arm, centre.Y)], ink),
        Polyline([new Point(centre.X, centre.Y - arm), new Point(centre.X, centre.Y + arm)], ink),
    ];

    /// <summary>An ellipse by the ends of its long axis, then of its short axis.</summary>
    public static DicomDataset Ellipse(IReadOnlyList<Point> ends, GraphicInk ink) =>
        Graphic("ELLIPSE", ends).Text(Tag.GraphicFilled, "N").Sequence(Tag.LineStyleSequence, ink.LineStyle()).Build();

    /// <summary>A circle by its centre and a point on it.</summary>
    public static DicomDataset Circle(Point centre, double radius, GraphicInk ink) =>
        Graphic("CIRCLE", [centre, new Point(centre.X + radius, centre.Y)])
            .Text(Tag.GraphicFilled, "N").Sequence(Tag.LineStyleSequence, ink.LineStyle()).Build();

    /// <summary>Text whose anchor is a place on the film.</summary>
    public static DicomDataset Label(string text, Point anchor, Encoding encoding) => new DatasetBuilder(encoding)
        .Text(Tag.UnformattedTextValue, AsciiText.Cut(text, 1024))
        .Float(Tag.AnchorPoint, anchor.X, anchor.Y)
        .Text(Tag.AnchorPointAnnotationUnits, "PIXEL")
        .Text(Tag.AnchorPointVisibility, "N")
        .Build();

    /// <summary>Text in a box given by its corners.</summary>
    public static DicomDataset Box(string text, Point topLeft, Point bottomRight, Encoding encoding) => new DatasetBuilder(encoding)
        .Text(Tag.UnformattedTextValue, AsciiText.Cut(text, 1024))
        .Text(Tag.BoundingBoxAnnotationUnits, "PIXEL")
        .Float(Tag.BoundingBoxTopLeftHandCorner, topLeft.X, topLeft.Y)
        .Float(Tag.BoundingBoxBottomRightHandCorner, bottomRight.X, bottomRight.Y)
        .Text(Tag.BoundingBoxTextHorizontalJustification, "LEFT")
        .Build();

    private static DatasetBuilder Graphic(string type, IReadOnlyList<Point> points) => new DatasetBuilder(Encoding.ASCII)
        .Text(Tag.GraphicAnnotationUnits, "PIXEL")
        .UInt16(Tag.GraphicDimensions, 2)
        .UInt16(Tag.NumberOfGraphicPoints, points.Count)
        .Float(Tag.GraphicData, [.. points.SelectMany(p => new[] { p.X, p.Y })])
        .Text(Tag.GraphicType, type);
}
