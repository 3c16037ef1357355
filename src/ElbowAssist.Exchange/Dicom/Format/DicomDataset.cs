using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>
/// A set of elements. Getters answer null or an empty list where an attribute is absent, empty or not of the form
/// asked for, so that a damaged optional attribute reads like a missing one.
/// </summary>
internal sealed class DicomDataset
{
    private readonly Dictionary<Tag, DicomElement> elements;
    private readonly DicomDataset? parent;

    public DicomDataset(IEnumerable<DicomElement> elements)
        : this(elements.ToDictionary(e => e.Tag), null)
    {
    }

    internal DicomDataset(Dictionary<Tag, DicomElement> elements, DicomDataset? parent)
    {
        this.elements = elements;
        this.parent = parent;
    }

    /// <summary>Elements by ascending tag.</summary>
    public IEnumerable<DicomElement> Elements => elements.Values.OrderBy(e => (uint)e.Tag);

    /// <summary>Encoding of text here, inherited from the enclosing data set; null if it needs code extensions.</summary>
    public Encoding? TextEncoding => elements.TryGetValue(Tag.SpecificCharacterSet, out var declared)
        ? CharacterSets.Of(Encoding.ASCII.GetString(declared.Value.Span).TrimEnd('\0', ' '))
        : parent is null ? Encoding.ASCII : parent.TextEncoding;

    public DicomElement? Find(Tag tag) => elements.GetValueOrDefault(tag);

    public IReadOnlyList<DicomDataset> Items(Tag tag) => Find(tag)?.Items ?? [];

    /// <summary>The values of a text attribute without their padding.</summary>
    public IReadOnlyList<string> Texts(Tag tag)
    {
        if (Find(tag) is not { } element || element.Vr == Vr.SQ || element.Value.Length > 65536)
        {
            return [];
        }

        var encoding = VrDictionary.Of(tag).UsesCharacterSet() ? TextEncoding ?? Encoding.ASCII : Encoding.ASCII;
        var text = encoding.GetString(element.Value.Span).TrimEnd('\0', ' ');
        return text.Length == 0 ? []
            : VrDictionary.Of(tag).IsMultiValued() ? [.. text.Split('\\').Select(t => t.Trim())]
            : [text];
    }

    public string? Text(Tag tag) => Texts(tag) is [{ Length: > 0 } first, ..] ? first : null;

    /// <summary>Values of DS, IS, US, SS, UL, SL, FL or FD; empty if any of them is no finite number.</summary>
    public IReadOnlyList<double> Numbers(Tag tag)
    {
        if (Find(tag) is not { } element)
        {
            return [];
        }

        var vr = element.Vr == Vr.UN ? VrDictionary.Of(tag) : element.Vr;
        var numbers = vr is Vr.DS or Vr.IS ? Decimals(Texts(tag)) : Binary(element.Value.Span, vr);
        return numbers.All(double.IsFinite) ? numbers : [];
    }

    public double? Number(Tag tag) => Numbers(tag) is [var first, ..] ? first : null;

    public int? Integer(Tag tag) =>
        Number(tag) is { } number && number == Math.Truncate(number) && Math.Abs(number) <= int.MaxValue ? (int)number : null;

    private static double[] Decimals(IReadOnlyList<string> texts) =>
        [.. texts.Select(t => double.TryParse(t, NumberStyles.Float, CultureInfo.InvariantCulture, out var v) ? v : double.NaN)];

    private static double[] Binary(ReadOnlySpan<byte> bytes, Vr vr)
    {
        var size = vr switch
        {
            Vr.US or Vr.SS or Vr.OW => 2,
            Vr.UL or Vr.SL or Vr.FL or Vr.OF => 4,
            Vr.FD or Vr.OD => 8,
            _ => 0,
        };
        if (size == 0 || bytes.Length % size != 0 || bytes.Length > InputLimits.DicomValueBytes)
        {
            return [];
        }

        var values = new double[bytes.Length / size];
        for (var i = 0; i < values.Length; i++)
        {
            var at = bytes[(i * size)..];
            values[i] = vr switch
            {
                Vr.US or Vr.OW => BinaryPrimitives.ReadUInt16LittleEndian(at),
                Vr.SS => BinaryPrimitives.ReadInt16LittleEndian(at),
                Vr.UL => BinaryPrimitives.ReadUInt32LittleEndian(at),
                Vr.SL => BinaryPrimitives.ReadInt32LittleEndian(at),
                Vr.FL or Vr.OF => BinaryPrimitives.ReadSingleLittleEndian(at),
                _ => BinaryPrimitives.ReadDoubleLittleEndian(at),
            };
        }

        return values;
    }
}
