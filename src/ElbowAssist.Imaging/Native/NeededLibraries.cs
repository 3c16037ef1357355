using System.Buffers.Binary;
using System.Text;

namespace ElbowAssist.Imaging.Native;

/// <summary>Reads which libraries an ELF64 shared object needs (its DT_NEEDED entries).</summary>
internal static class NeededLibraries
{
    private const int MostEntries = 4096;
    private const int LongestName = 256;

    /// <summary>SONAMEs in the order of the file; empty if the file is no little-endian ELF64 object.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static IReadOnlyList<string> Of(string path)
    {
        using var file = File.OpenRead(path);
        var header = Read(file, 0, 64);
        if (header is null || !header.AsSpan(0, 6).SequenceEqual<byte>([0x7F, (byte)'E', (byte)'L', (byte)'F', 2, 1]))
        {
            return [];
        }

        var programs = ReadPrograms(file, header);
        var dynamic = programs.FirstOrDefault(p => p.Type == 2);
        var entries = ReadDynamic(file, dynamic);
        var strings = entries.FirstOrDefault(e => e.Tag == 5).Value;
        var home = programs.FirstOrDefault(p => p.Type == 1 && strings >= p.Address && strings < p.Address + p.Size);
        if (home.Size == 0)
        {
            return [];
        }

        return [.. entries.Where(e => e.Tag == 1).Select(e => ReadName(file, home.At + strings - home.Address + e.Value))];
    }

    private static List<(int Type, long At, long Address, long Size)> ReadPrograms(FileStream file, byte[] header)
    {
        var at = BinaryPrimitives.ReadInt64LittleEndian(header.AsSpan(32));
        var size = BinaryPrimitives.ReadUInt16LittleEndian(header.AsSpan(54));
        var count = BinaryPrimitives.ReadUInt16LittleEndian(header.AsSpan(56));
        var programs = new List<(int, long, long, long)>();
        for (var i = 0; i < count && size >= 56; i++)
        {
            if (Read(file, at + ((long)i * size), 56) is { } p)
            {
                programs.Add((
                    BinaryPrimitives.ReadInt32LittleEndian(p),
                    BinaryPrimitives.ReadInt64LittleEndian(p.AsSpan(8)),
                    BinaryPrimitives.ReadInt64LittleEndian(p.AsSpan(16)),
                    BinaryPrimitives.ReadInt64LittleEndian(p.AsSpan(32))));
            }
        }

        return programs;
    }

    private static List<(long Tag, long Value)> ReadDynamic(
        FileStream file, (int Type, long At, long Address, long Size) dynamic)
    {
        var entries = new List<(long, long)>();
        for (var i = 0; i < Math.Min(dynamic.Size / 16, MostEntries); i++)
        {
            if (Read(file, dynamic.At + (i * 16L), 16) is not { } entry)
            {
                break;
            }

            var tag = BinaryPrimitives.ReadInt64LittleEndian(entry);
            if (tag == 0)
            {
                break;
            }

            entries.Add((tag, BinaryPrimitives.ReadInt64LittleEndian(entry.AsSpan(8))));
        }

        return entries;
    }

    private static string ReadName(FileStream file, long at)
    {
        var bytes = new byte[LongestName];
        file.Seek(at, SeekOrigin.Begin);
        var read = file.ReadAtLeast(bytes, LongestName, throwOnEndOfStream: false);
        var end = Array.IndexOf(bytes, (byte)0, 0, read);
        return Encoding.ASCII.GetString(bytes, 0, Math.Max(0, end));
    }

    private static byte[]? Read(FileStream file, long at, int count)
    {
        if (at < 0 || at + count > file.Length)
        {
            return null;
        }

        var bytes = new byte[count];
        file.Seek(at, SeekOrigin.Begin);
        file.ReadExactly(bytes);
        return bytes;
    }
}
