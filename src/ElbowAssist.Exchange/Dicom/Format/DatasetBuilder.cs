using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>
/// Puts a data set together; representations come from the dictionary. Text is written in one encoding; characters it
/// cannot hold become their closest ASCII form.
/// </summary>
internal sealed class DatasetBuilder(Encoding encoding)
{
    private readonly Dictionary<Tag, DicomElement> elements = [];

    /// <summary>Encoding of text.</summary>
    public Encoding Encoding { get; } = encoding;

    public DatasetBuilder Text(Tag tag, params string[] values)
    {
        var vr = VrDictionary.Of(tag);
        var used = vr.UsesCharacterSet() ? Encoding : Encoding.ASCII;
        return Bytes(tag, used.GetBytes(AsciiText.Fit(string.Join('\\', values), used)));
    }

    public DatasetBuilder Bytes(Tag tag, byte[] value) => Add(DicomElement.Of(tag, VrDictionary.Of(tag), value));

    public DatasetBuilder Bytes(Tag tag, Vr vr, byte[] value) => Add(DicomElement.Of(tag, vr, value));

    /// <summary>An attribute that must be present but has no value.</summary>
    public DatasetBuilder Empty(Tag tag) =>
        VrDictionary.Of(tag) == Vr.SQ ? Add(DicomElement.Sequence(tag, [])) : Bytes(tag, []);

    /// <summary>Decimal strings of at most 16 characters (PS3.5 6.2).</summary>
    public DatasetBuilder Decimal(Tag tag, params double[] values) => Text(tag, [.. values.Select(DecimalString)]);

    public DatasetBuilder Integer(Tag tag, params int[] values) =>
        Text(tag, [.. values.Select(v => v.ToString(CultureInfo.InvariantCulture))]);

    public DatasetBuilder UInt16(Tag tag, params int[] values) =>
        Bytes(tag, Pack(values, 2, (bytes, v) => BinaryPrimitives.WriteUInt16LittleEndian(bytes, checked((ushort)v))));

    public DatasetBuilder UInt32(Tag tag, params uint[] values) =>
        Bytes(tag, Pack(values, 4, BinaryPrimitives.WriteUInt32LittleEndian));

    public DatasetBuilder Int32(Tag tag, params int[] values) =>
        Bytes(tag, Pack(values, 4, BinaryPrimitives.WriteInt32LittleEndian));

    public DatasetBuilder Float(Tag tag, params double[] values) =>
        Bytes(tag, Pack(values, 4, (bytes, v) => BinaryPrimitives.WriteSingleLittleEndian(bytes, (float)v)));

    public DatasetBuilder Sequence(Tag tag, params IReadOnlyList<DicomDataset> items) =>
        Add(DicomElement.Sequence(tag, items));

    /// <summary>An element as it stands; replaces an earlier one of its tag.</summary>
    public DatasetBuilder Add(DicomElement element)
    {
        elements[element.Tag] = element;
        return this;
    }

    public DicomDataset Build() => new(elements.Values);

    /// <summary>The shortest decimal form that fits into 16 characters.</summary>
    public static string DecimalString(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), "A decimal string needs a finite number.");
        }

        for (var digits = 15; digits > 1; digits--)
        {
            var text = value.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            if (text.Length <= 16)
            {
                return text;
            }
        }

        return "0";
    }

    private delegate void Put<T>(Span<byte> bytes, T value);

    private static byte[] Pack<T>(T[] values, int size, Put<T> put)
    {
        var bytes = new byte[values.Length * size];
        for (var i = 0; i < values.Length; i++)
        {
            put(bytes.AsSpan(i * size, size), values[i]);
        }

        return bytes;
    }
}
