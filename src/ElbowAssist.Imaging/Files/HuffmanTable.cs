namespace ElbowAssist.Imaging.Files;

/// <summary>A JPEG Huffman table as one look-up by the next 16 bits (ITU-T T.81, annex C).</summary>
internal sealed class HuffmanTable
{
    private readonly ushort[] lengthAndSymbol = new ushort[1 << 16];

    /// <summary>Builds the table from a DHT entry: 16 counts by code length, then the symbols.</summary>
    /// <returns>Null if the counts give more codes than fit.</returns>
    public static HuffmanTable? Build(ReadOnlySpan<byte> counts, ReadOnlySpan<byte> symbols)
    {
        var table = new HuffmanTable();
        var code = 0;
        var next = 0;
        for (var length = 1; length <= 16; length++)
        {
            for (var i = 0; i < counts[length - 1]; i++)
            {
                if (code >= 1 << length)
                {
                    return null;
                }

                table.lengthAndSymbol.AsSpan(code << (16 - length), 1 << (16 - length))
                    .Fill((ushort)((length << 8) | symbols[next++]));
                code++;
            }

            code <<= 1;
        }

        return table;
    }

    /// <summary>Length of the code in the high byte, symbol in the low byte; 0 if these bits begin no code.</summary>
    public ushort LookUp(int sixteenBits) => lengthAndSymbol[sixteenBits];
}
