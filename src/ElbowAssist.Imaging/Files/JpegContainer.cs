using System.Buffers.Binary;

namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Walks the marker segments and scans of a JPEG file to EOI. Layout: ITU-T T.81, annex B. Decoders fill a scan that
/// ends early with grey, so a missing EOI refuses the file, and
/// the codes of sequential scans are walked block by block.
/// </summary>
internal static class JpegContainer
{
    private const string Name = "JPEG";
    private const byte EndOfImage = 0xD9;
    private const byte StartOfScan = 0xDA;

    public static bool Is(ReadOnlySpan<byte> file) => file.StartsWith<byte>([0xFF, 0xD8, 0xFF]);

    public static ContainerFacts Inspect(ReadOnlySpan<byte> file)
    {
        var at = 2;
        var frame = new JpegFrame();
        var orientation = 1;
        long scanBytes = 0;
        while (true)
        {
            var marker = NextMarker(file, ref at);
            if (marker == EndOfImage)
            {
                return Complete(frame, scanBytes) with { Orientation = orientation };
            }

            if (marker is 0x01 or (>= 0xD0 and <= 0xD8))
            {
                throw Damage("a marker stands where none may");
            }

            var body = Segment(file, ref at);
            switch (marker)
            {
                case 0xC4:
                    frame.ReadTables(body);
                    break;
                case 0xDD:
                    frame.ReadRestartInterval(body);
                    break;
                case 0xE1 when body.StartsWith("Exif\0\0"u8):
                    orientation = ExifOrientation.Read(body[6..]);
                    break;
                case StartOfScan:
                    var start = at;
                    scanBytes += frame.IsRead ? SkipScan(file, ref at) : throw Damage("a scan comes before the frame");
                    frame.WalkScan(body, file[start..at]);
                    break;
                case >= 0xC0 and <= 0xCF and not 0xC8 and not 0xCC:
                    frame.ReadFrame(marker, body);
                    break;
                default:
                    break;
            }
        }
    }

    private static byte NextMarker(ReadOnlySpan<byte> file, ref int at)
    {
        if (at < file.Length && file[at] != 0xFF)
        {
            throw Damage("a marker is missing");
        }

        while (at < file.Length && file[at] == 0xFF)
        {
            at++;
        }

        return at < file.Length ? file[at++] : throw DamagedContainerException.CutOff(Name);
    }

    private static ReadOnlySpan<byte> Segment(ReadOnlySpan<byte> file, ref int at)
    {
        if (file.Length - at < 2)
        {
            throw DamagedContainerException.CutOff(Name);
        }

        var length = BinaryPrimitives.ReadUInt16BigEndian(file[at..]);
        if (length < 2)
        {
            throw Damage("a segment has an impossible length");
        }

        if (length > file.Length - at)
        {
            throw DamagedContainerException.CutOff(Name);
        }

        var body = file.Slice(at + 2, length - 2);
        at += length;
        return body;
    }

    /// <summary>Entropy-coded data up to the next marker; FF 00 is a stuffed byte, restart markers count 0 to 7.</summary>
    private static long SkipScan(ReadOnlySpan<byte> file, ref int at)
    {
        var start = at;
        var restart = 0;
        while (true)
        {
            var next = file[at..].IndexOf((byte)0xFF);
            if (next < 0 || at + next + 1 >= file.Length)
            {
                throw DamagedContainerException.CutOff(Name);
            }

            at += next;
            var code = file[at + 1];
            if (code is >= 0xD0 and <= 0xD7)
            {
                if (code != 0xD0 + restart)
                {
                    throw Damage("a restart marker is out of sequence");
                }

                restart = (restart + 1) & 7;
            }
            else if (code is not 0 and not 0xFF)
            {
                return at - start;
            }

            at += code == 0xFF ? 1 : 2;
        }
    }

    private static ContainerFacts Complete(JpegFrame frame, long scanBytes)
    {
        // A Huffman code has at least one bit, and every block has at least the code of its DC value.
        var leastBytes = (long)((frame.Width + 7) / 8) * ((frame.Height + 7) / 8) / 8;
        return frame.IsRead && scanBytes > 0 && scanBytes >= leastBytes
            ? new ContainerFacts(FilmFormat.Jpeg, frame.Width, frame.Height, 8, frame.Channels, 1)
            : throw Damage("it holds too little image data for its size");
    }

    private static DamagedContainerException Damage(string where) => DamagedContainerException.Damaged(Name, where);
}
