using System.Buffers.Binary;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>JPEG lossless, process 14: Huffman coded differences from a predictor (T.81 annex H), one component.</summary>
internal static class LosslessJpegDecoder
{
    private const byte StartOfFrame3 = 0xC3;
    private const byte DefineHuffmanTable = 0xC4;
    private const byte DefineRestartInterval = 0xDD;

    /// <exception cref="DicomFormatException">Damaged, of another size than the film, or in colour.</exception>
    public static ushort[] Decode(ReadOnlySpan<byte> codestream, PixelLayout layout)
    {
        var tables = new HuffmanTable?[16];
        var segments = new JpegSegments(codestream);
        var (precision, restartInterval) = (0, 0);
        while (segments.Next())
        {
            var content = segments.Content;
            switch (segments.Marker)
            {
                case StartOfFrame3:
                    precision = ReadFrame(content, layout);
                    break;
                case >= 0xC0 and <= 0xCF and not (DefineHuffmanTable or 0xC8 or 0xCC):
                    throw new DicomFormatException("The file says JPEG Lossless but holds another kind of JPEG; export it as Explicit VR Little Endian.");
                case DefineHuffmanTable:
                    while (content.Length > 0)
                    {
                        var table = HuffmanTable.Read(ref content, out var tableClass, out var number);
                        tables[tableClass == 0 ? number : throw JpegSegments.Damaged()] = table;
                    }

                    break;
                case DefineRestartInterval when content.Length == 2:
                    restartInterval = BinaryPrimitives.ReadUInt16BigEndian(content);
                    break;
            }
        }

        var scan = segments.Content;
        if (precision == 0 || scan.Length != 6 || scan[0] != 1 || scan[3] is < 1 or > 7 ||
            tables[scan[2] >> 4] is not { } huffman || restartInterval % layout.Width != 0 || (scan[5] & 0x0F) >= precision)
        {
            throw JpegSegments.Damaged();
        }

        return Scan(new JpegBits(segments.Rest, stuffedBits: false), huffman, layout, precision, scan[3], scan[5] & 0x0F, restartInterval / layout.Width);
    }

    private static int ReadFrame(ReadOnlySpan<byte> frame, PixelLayout layout)
    {
        if (frame.Length < 6 || frame[5] != 1 || frame[0] is < 2 or > 16 ||
            BinaryPrimitives.ReadUInt16BigEndian(frame[1..]) != layout.Height ||
            BinaryPrimitives.ReadUInt16BigEndian(frame[3..]) != layout.Width)
        {
            throw DicomFormatException.Damaged($"its JPEG coded pixels are not those its header describes");
        }

        return frame[0];
    }

    private static ushort[] Scan(
        JpegBits bits, HuffmanTable huffman, PixelLayout layout, int precision, int predictor, int pointTransform, int restartRows)
    {
        var width = layout.Width;
        var values = new ushort[layout.PixelCount];
        var start = 1 << (precision - pointTransform - 1);
        for (var y = 0; y < layout.Height; y++)
        {
            var restarted = restartRows > 0 && y > 0 && y % restartRows == 0;
            if (restarted)
            {
                bits.Restart();
            }

            var firstRow = y == 0 || restarted;
            var row = values.AsSpan(y * width, width);
            var above = firstRow ? default : values.AsSpan((y - 1) * width, width);
            for (var x = 0; x < width; x++)
            {
                var predicted = firstRow
                    ? x == 0 ? start : row[x - 1]
                    : x == 0 ? above[0] : Predict(predictor, row[x - 1], above[x], above[x - 1]);
                row[x] = (ushort)(predicted + Difference(ref bits, huffman));
            }
        }

        if (pointTransform > 0)
        {
            foreach (ref var value in values.AsSpan())
            {
                value <<= pointTransform;
            }
        }

        return values;
    }

    /// <summary>Predictors of table H.1 from the values to the left (a), above (b) and above left (c).</summary>
    private static int Predict(int predictor, int a, int b, int c) => predictor switch
    {
        1 => a,
        2 => b,
        3 => c,
        4 => a + b - c,
        5 => a + ((b - c) >> 1),
        6 => b + ((a - c) >> 1),
        _ => (a + b) >> 1,
    };

    private static int Difference(ref JpegBits bits, HuffmanTable huffman)
    {
        var size = huffman.Decode(ref bits);
        if (size is 0 or 16)
        {
            return size == 0 ? 0 : 32768;
        }

        if (size > 16)
        {
            throw JpegSegments.Damaged();
        }

        var value = bits.Take(size);
        return value < 1 << (size - 1) ? value - (1 << size) + 1 : value;
    }
}
