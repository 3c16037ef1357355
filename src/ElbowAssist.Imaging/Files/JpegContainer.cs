using System.Buffers.Binary;

namespace ElbowAssist.Imaging.Files;

/// <summary>
/// Walks the marker segments and scans of a JPEG file to EOI. Layout: ITU-T T.81, annex B. Decoders fill a scan that
/// ends early with grey, so a missing EOI, a scan out of sequence or one too short for its blocks refuses the file.
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
        ContainerFacts? frame = null;
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
            if (IsFrame(marker))
            {
                frame = frame is null ? ReadFrame(body) : throw Damage("it has two frames");
            }
            else if (marker == 0xE1 && body.StartsWith("Exif\0\0"u8))
            {
                orientation = ExifOrientation.Read(body[6..]);
            }
            else if (marker == StartOfScan)
            {
                scanBytes += frame is null ? throw Damage("a scan comes before the frame") : SkipScan(file, ref at);
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

    private static bool IsFrame(byte marker) => marker is >= 0xC0 and <= 0xCF and not 0xC4 and not 0xC8 and not 0xCC;

    private static ContainerFacts ReadFrame(ReadOnlySpan<byte> body)
    {
        if (body.Length < 6 || body.Length < 6 + (3 * body[5]))
        {
            throw Damage("the frame header is too short");
        }

        int height = BinaryPrimitives.ReadUInt16BigEndian(body[1..]);
        int width = BinaryPrimitives.ReadUInt16BigEndian(body[3..]);
        if (width == 0 || height == 0 || body[5] is 0 or > 4)
        {
            throw Damage("the frame header holds impossible values");
        }

        return body[0] == 8
            ? new ContainerFacts(FilmFormat.Jpeg, width, height, 8, body[5] == 1 ? 1 : 3, 1)
            : throw DamagedContainerException.Unsupported(Name, "12 bits a sample");
    }

    private static ContainerFacts Complete(ContainerFacts? frame, long scanBytes)
    {
        var facts = frame ?? throw Damage("it has no frame");
        // A Huffman code has at least one bit, and every block has at least the code of its DC value.
        var leastBytes = (facts.Width + 7) / 8 * ((facts.Height + 7) / 8) / 8;
        return scanBytes > 0 && scanBytes >= leastBytes ? facts : throw Damage("it holds too little image data for its size");
    }

    private static DamagedContainerException Damage(string where) => DamagedContainerException.Damaged(Name, where);
}
