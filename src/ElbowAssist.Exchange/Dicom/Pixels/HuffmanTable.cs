namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>A Huffman table of T.81 annex C, looked up by the next 16 bits.</summary>
internal sealed class HuffmanTable
{
    private readonly ushort[] lookup = new ushort[65536];

    private HuffmanTable()
    {
    }

    /// <summary>Reads one table of a DHT segment; answers its class and number, and moves the span behind it.</summary>
    public static HuffmanTable Read(ref ReadOnlySpan<byte> segment, out int tableClass, out int number)
    {
        if (segment.Length < 17)
        {
            throw JpegSegments.Damaged();
        }

        (tableClass, number) = (segment[0] >> 4, segment[0] & 0x0F);
        var counts = segment.Slice(1, 16);
        var values = segment[17..];
        var table = new HuffmanTable();
        var (next, used) = (0, 0);
        for (var length = 1; length <= 16; length++)
        {
            for (var i = 0; i < counts[length - 1]; i++, used++)
            {
                var span = 1 << (16 - length);
                if (used >= values.Length || next + span > 65536)
                {
                    throw JpegSegments.Damaged();
                }

                table.lookup.AsSpan(next, span).Fill((ushort)((length << 8) | values[used]));
                next += span;
            }
        }

        segment = values[used..];
        return table;
    }

    public int Decode(ref JpegBits bits)
    {
        var entry = lookup[bits.Peek16()];
        if (entry == 0)
        {
            throw JpegSegments.Damaged();
        }

        bits.Skip(entry >> 8);
        return entry & 0xFF;
    }
}
