using System.Buffers.Binary;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>A lookup table of PS3.3 C.11.1 and C.11.2; inputs beyond its ends take the first or last entry.</summary>
internal sealed class LookupTable
{
    private readonly double first;
    private readonly ushort[] entries;
    private readonly double top;

    private LookupTable(double first, ushort[] entries, int bits)
    {
        this.first = first;
        this.entries = entries;
        top = (1 << bits) - 1;
    }

    /// <summary>The table of a sequence item, or null if it is damaged.</summary>
    /// <param name="item">Item with LUT Descriptor and LUT Data.</param>
    /// <param name="signedInput">Whether the first mapped value is to be read as signed.</param>
    public static LookupTable? Of(DicomDataset item, bool signedInput)
    {
        if (item.Find(Tag.LutDescriptor)?.Value is not { Length: 6 } descriptor ||
            item.Find(Tag.LutData)?.Value is not { } data)
        {
            return null;
        }

        var count = (int)BinaryPrimitives.ReadUInt16LittleEndian(descriptor.Span);
        count = count == 0 ? 65536 : count;
        var start = descriptor.Span[2..];
        var bits = BinaryPrimitives.ReadUInt16LittleEndian(descriptor.Span[4..]);
        var wide = data.Length >= 2 * count;
        if (bits is < 8 or > 16 || (!wide && (bits > 8 || data.Length < count)))
        {
            return null;
        }

        var table = new ushort[count];
        for (var i = 0; i < count; i++)
        {
            table[i] = wide ? BinaryPrimitives.ReadUInt16LittleEndian(data.Span[(2 * i)..]) : data.Span[i];
        }

        return new(
            signedInput ? BinaryPrimitives.ReadInt16LittleEndian(start) : BinaryPrimitives.ReadUInt16LittleEndian(start),
            table,
            bits);
    }

    /// <summary>Output for an input.</summary>
    public double this[double input] =>
        entries[(int)Math.Clamp(Math.Round(input) - first, 0, entries.Length - 1)];

    /// <summary>Output from 0 to 1.</summary>
    public double Fraction(double input) => Math.Min(1, this[input] / top);
}
