using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>A node of a report's content tree (PS3.3 C.17.3). Which values it has follows from its value type.</summary>
internal sealed record ContentItem
{
    public const string Contains = "CONTAINS";
    public const string HasObservationContext = "HAS OBS CONTEXT";
    public const string HasAcquisitionContext = "HAS ACQ CONTEXT";
    public const string HasConceptModifier = "HAS CONCEPT MOD";
    public const string HasProperties = "HAS PROPERTIES";
    public const string InferredFrom = "INFERRED FROM";
    public const string SelectedFrom = "SELECTED FROM";

    public required string ValueType { get; init; }

    public required string Relationship { get; init; }

    public Code? Concept { get; init; }

    public IReadOnlyList<ContentItem> Children { get; init; } = [];

    /// <summary>Value of CODE, or the unit of NUM.</summary>
    public Code? Code { get; init; }

    /// <summary>Value of TEXT, UIDREF or PNAME.</summary>
    public string? Text { get; init; }

    /// <summary>Value of NUM.</summary>
    public double? Number { get; init; }

    /// <summary>Graphic type of SCOORD.</summary>
    public string? Graphic { get; init; }

    /// <summary>Points of SCOORD: pixels of the image, (0,0) the top-left corner of the top-left pixel.</summary>
    public IReadOnlyList<Point> Points { get; init; } = [];

    /// <summary>Class and instance of IMAGE.</summary>
    public (string SopClassUid, string SopInstanceUid)? Image { get; init; }

    public static ContentItem Container(string relationship, Code concept, params IReadOnlyList<ContentItem> children) =>
        new() { ValueType = "CONTAINER", Relationship = relationship, Concept = concept, Children = children };

    public static ContentItem OfCode(string relationship, Code concept, Code value, params IReadOnlyList<ContentItem> children) =>
        new() { ValueType = "CODE", Relationship = relationship, Concept = concept, Code = value, Children = children };

    public static ContentItem OfText(string relationship, Code concept, string text) =>
        new() { ValueType = "TEXT", Relationship = relationship, Concept = concept, Text = text };

    public static ContentItem OfUid(string relationship, Code concept, string uid) =>
        new() { ValueType = "UIDREF", Relationship = relationship, Concept = concept, Text = uid };

    public static ContentItem OfPerson(string relationship, Code concept, string name) =>
        new() { ValueType = "PNAME", Relationship = relationship, Concept = concept, Text = name };

    public static ContentItem OfNumber(string relationship, Code concept, double value, Code unit, params IReadOnlyList<ContentItem> children) =>
        new() { ValueType = "NUM", Relationship = relationship, Concept = concept, Number = value, Code = unit, Children = children };

    public static ContentItem OfImage(string relationship, DicomSource image) =>
        new() { ValueType = "IMAGE", Relationship = relationship, Image = (image.SopClassUid, image.SopInstanceUid) };

    /// <summary>Points on an image.</summary>
    public static ContentItem OfPoints(string graphic, IReadOnlyList<Point> points, DicomSource image) => new()
    {
        ValueType = "SCOORD",
        Relationship = InferredFrom,
        Graphic = graphic,
        Points = points,
        Children = [OfImage(SelectedFrom, image)],
    };
}
