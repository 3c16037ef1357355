using System.Buffers.Binary;

namespace ElbowAssist.Imaging.Files;

/// <summary>The frame header of a JPEG file and the tables in force, as far as walking its scans needs them.</summary>
internal sealed class JpegFrame
{
    private const string Name = "JPEG";
    private readonly HuffmanTable?[] dc = new HuffmanTable?[4];
    private readonly HuffmanTable?[] ac = new HuffmanTable?[4];
    private Component[] components = [];
    private int restartInterval;
    private bool walkable;

    private sealed record Component(byte Id, int Across, int Down);

    public int Width { get; private set; }

    public int Height { get; private set; }

    public int Channels => components.Length == 1 ? 1 : 3;

    public bool IsRead => components.Length > 0;

    /// <summary>Reads a start-of-frame segment (ITU-T T.81, B.2.2).</summary>
    public void ReadFrame(byte marker, ReadOnlySpan<byte> body)
    {
        if (IsRead || body.Length < 6 || body.Length < 6 + (3 * body[5]))
        {
            throw Damage("the frame header does not fit");
        }

        Height = BinaryPrimitives.ReadUInt16BigEndian(body[1..]);
        Width = BinaryPrimitives.ReadUInt16BigEndian(body[3..]);
        if (Width == 0 || Height == 0 || body[5] is 0 or > 4)
        {
            throw Damage("the frame header holds impossible values");
        }

        if (body[0] != 8)
        {
            throw DamagedContainerException.Unsupported(Name, "12 bits a sample");
        }

        // Baseline and extended sequential Huffman scans are walked block by block; progressive ones by their markers.
        walkable = marker is 0xC0 or 0xC1;
        components = new Component[body[5]];
        for (var i = 0; i < components.Length; i++)
        {
            var sampling = body[7 + (3 * i)];
            components[i] = new Component(body[6 + (3 * i)], sampling >> 4, sampling & 15);
            if (components[i].Across is < 1 or > 4 || components[i].Down is < 1 or > 4)
            {
                throw Damage("the frame header holds impossible values");
            }
        }
    }

    /// <summary>Reads a define-Huffman-tables segment (B.2.4.2).</summary>
    public void ReadTables(ReadOnlySpan<byte> body)
    {
        while (body.Length >= 17)
        {
            var symbols = 0;
            foreach (var count in body.Slice(1, 16))
            {
                symbols += count;
            }

            if (body.Length < 17 + symbols || (body[0] & 15) > 3 || (body[0] >> 4) > 1)
            {
                throw Damage("a table does not fit");
            }

            var target = body[0] >> 4 == 0 ? dc : ac;
            target[body[0] & 15] = HuffmanTable.Build(body.Slice(1, 16), body.Slice(17, symbols)) ?? throw Damage("a table does not fit");
            body = body[(17 + symbols)..];
        }
    }

    /// <summary>Reads a restart interval (B.2.4.4).</summary>
    public void ReadRestartInterval(ReadOnlySpan<byte> body) =>
        restartInterval = body.Length >= 2 ? BinaryPrimitives.ReadUInt16BigEndian(body) : throw Damage("a segment is too short");

    /// <summary>Decodes the Huffman codes of every block of a sequential scan and throws their values away.</summary>
    /// <param name="header">Body of the start-of-scan segment (B.2.3).</param>
    /// <param name="scan">Entropy-coded data with its restart markers.</param>
    public void WalkScan(ReadOnlySpan<byte> header, ReadOnlySpan<byte> scan)
    {
        if (!walkable)
        {
            return;
        }

        if (header.IsEmpty || header[0] is 0 or > 4 || header.Length < 1 + (2 * header[0]))
        {
            throw Damage("a scan header does not fit");
        }

        var parts = new List<(int Blocks, HuffmanTable Dc, HuffmanTable Ac)>();
        var single = header[0] == 1;
        Component? only = null;
        for (var i = 0; i < header[0]; i++)
        {
            var id = header[1 + (2 * i)];
            var tables = header[2 + (2 * i)];
            only = Array.Find(components, c => c.Id == id) ?? throw Damage("a scan names an unknown component");
            parts.Add((
                single ? 1 : only.Across * only.Down,
                dc[(tables >> 4) & 3] ?? throw Damage("a table is missing"),
                ac[tables & 3] ?? throw Damage("a table is missing")));
        }

        WalkUnits(parts, single ? BlocksOf(only!) : InterleavedUnits(), scan);
    }

    private void WalkUnits(List<(int Blocks, HuffmanTable Dc, HuffmanTable Ac)> parts, long units, ReadOnlySpan<byte> scan)
    {
        var bits = new JpegBits(scan);
        for (long unit = 0; unit < units; unit++)
        {
            if (restartInterval > 0 && unit > 0 && unit % restartInterval == 0 && !bits.Restart())
            {
                throw Damage("a restart marker is missing");
            }

            foreach (var (blocks, dcTable, acTable) in parts)
            {
                for (var block = 0; block < blocks; block++)
                {
                    if (!SkipBlock(ref bits, dcTable, acTable))
                    {
                        throw bits.Exhausted
                            ? DamagedContainerException.CutOff(Name)
                            : Damage("the image data holds an impossible code");
                    }
                }
            }
        }
    }

    /// <summary>One 8 × 8 block: the DC difference, then runs of AC values up to 63 (F.2.2).</summary>
    private static bool SkipBlock(ref JpegBits bits, HuffmanTable dcTable, HuffmanTable acTable)
    {
        var size = bits.Symbol(dcTable);
        if (size is < 0 or > 16)
        {
            return false;
        }

        bits.Take(size);
        for (var k = 1; k < 64; k++)
        {
            var symbol = bits.Symbol(acTable);
            if (symbol < 0)
            {
                return false;
            }

            var run = symbol >> 4;
            if ((symbol & 15) == 0)
            {
                if (run < 15)
                {
                    break;
                }

                k += 15;
                continue;
            }

            k += run;
            bits.Take(symbol & 15);
            if (k > 63)
            {
                return false;
            }
        }

        return !bits.Exhausted;
    }

    private int MostAcross => components.Max(c => c.Across);

    private int MostDown => components.Max(c => c.Down);

    private long InterleavedUnits() => (long)Pieces(Width, 8 * MostAcross) * Pieces(Height, 8 * MostDown);

    private long BlocksOf(Component c) =>
        (long)Pieces(Pieces(Width * c.Across, MostAcross), 8) * Pieces(Pieces(Height * c.Down, MostDown), 8);

    private static int Pieces(int length, int piece) => (length + piece - 1) / piece;

    private static DamagedContainerException Damage(string where) => DamagedContainerException.Damaged(Name, where);
}
