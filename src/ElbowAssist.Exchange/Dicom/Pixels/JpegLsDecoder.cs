using System.Buffers.Binary;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>JPEG-LS lossless (T.87), one component: reads the header and hands the scan to <see cref="JpegLsScan"/>.</summary>
internal static class JpegLsDecoder
{
    private const byte StartOfFrame55 = 0xF7;
    private const byte PresetParameters = 0xF8;
    private const byte DefineRestartInterval = 0xDD;

    /// <exception cref="DicomFormatException">Damaged, of another size than the film, in colour, near-lossless or with restarts.</exception>
    public static ushort[] Decode(ReadOnlySpan<byte> codestream, PixelLayout layout)
    {
        var segments = new JpegSegments(codestream);
        var precision = 0;
        int[] preset = [0, 0, 0, 0, 0];
        while (segments.Next())
        {
            var content = segments.Content;
            switch (segments.Marker)
            {
                case StartOfFrame55:
                    precision = ReadFrame(content, layout);
                    break;
                case PresetParameters when content.Length == 11 && content[0] == 1:
                    for (var i = 0; i < 5; i++)
                    {
                        preset[i] = BinaryPrimitives.ReadUInt16BigEndian(content[(1 + (2 * i))..]);
                    }

                    break;
                case PresetParameters or DefineRestartInterval:
                    throw new DicomFormatException("The JPEG-LS pixels use mapping tables or restarts, which are not read here; export the film as Explicit VR Little Endian.");
            }
        }

        var scan = segments.Content;
        if (precision == 0 || scan.Length != 6 || scan[0] != 1 || scan[2] != 0 || scan[4] != 0 || scan[5] != 0)
        {
            throw JpegSegments.Damaged();
        }

        if (scan[3] != 0)
        {
            throw new DicomFormatException("The JPEG-LS pixels are near-lossless; ask the archive for the original film.");
        }

        var parameters = JpegLsParameters.Of(precision, preset);
        return new JpegLsScan(parameters).Decode(new JpegBits(segments.Rest, stuffedBits: true), layout.Width, layout.Height);
    }

    private static int ReadFrame(ReadOnlySpan<byte> frame, PixelLayout layout)
    {
        if (frame.Length < 6 || frame[5] != 1 || frame[0] is < 2 or > 16 ||
            BinaryPrimitives.ReadUInt16BigEndian(frame[1..]) != layout.Height ||
            BinaryPrimitives.ReadUInt16BigEndian(frame[3..]) != layout.Width)
        {
            throw DicomFormatException.Damaged($"its JPEG-LS coded pixels are not those its header describes");
        }

        return frame[0];
    }
}
