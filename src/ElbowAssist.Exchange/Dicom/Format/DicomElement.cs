namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>An element: a tag with a value, with the items of a sequence, or with the fragments of coded pixels.</summary>
internal sealed class DicomElement
{
    private DicomElement(
        Tag tag,
        Vr vr,
        ReadOnlyMemory<byte> value,
        IReadOnlyList<DicomDataset> items,
        IReadOnlyList<ReadOnlyMemory<byte>>? fragments)
    {
        Tag = tag;
        Vr = vr;
        Value = value;
        Items = items;
        Fragments = fragments;
    }

    public Tag Tag { get; }

    public Vr Vr { get; }

    /// <summary>The bytes as stored, padding included; little endian.</summary>
    public ReadOnlyMemory<byte> Value { get; }

    /// <summary>Items of a sequence; empty otherwise.</summary>
    public IReadOnlyList<DicomDataset> Items { get; }

    /// <summary>Fragments of coded pixels, the offset table first; null for any other element.</summary>
    public IReadOnlyList<ReadOnlyMemory<byte>>? Fragments { get; }

    public static DicomElement Of(Tag tag, Vr vr, ReadOnlyMemory<byte> value) => new(tag, vr, value, [], null);

    public static DicomElement Sequence(Tag tag, IReadOnlyList<DicomDataset> items) => new(tag, Vr.SQ, default, items, null);

    public static DicomElement Encapsulated(Tag tag, Vr vr, IReadOnlyList<ReadOnlyMemory<byte>> fragments) =>
        new(tag, vr, default, [], fragments);
}
