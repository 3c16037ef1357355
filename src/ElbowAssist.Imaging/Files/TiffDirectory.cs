using System.Buffers.Binary;

namespace ElbowAssist.Imaging.Files;

/// <summary>The whole-number tags of the first image file directory of a TIFF file (TIFF 6.0, section 2).</summary>
internal sealed class TiffDirectory
{
    private const string Name = "TIFF";
    private readonly Dictionary<int, long[]> tags = [];

    public static TiffDirectory ReadFirst(ReadOnlySpan<byte> file)
    {
        var little = file[0] == 'I';
        long at = file.Length >= 8 ? U32(file, 4, little) : throw DamagedContainerException.CutOff(Name);
        if (at > file.Length - 2)
        {
            throw DamagedContainerException.CutOff(Name);
        }

        var directory = new TiffDirectory();
        int entries = U16(file, (int)at, little);
        for (var i = 0; i < entries; i++)
        {
            var entry = at + 2 + (i * 12L);
            if (entry > file.Length - 12)
            {
                throw DamagedContainerException.CutOff(Name);
            }

            directory.Add(file, (int)entry, little);
        }

        return directory;
    }

    public bool Has(int tag) => tags.ContainsKey(tag);

    /// <summary>First value of a tag, or null.</summary>
    public long? Single(int tag) => tags.TryGetValue(tag, out var values) && values.Length > 0 ? values[0] : null;

    /// <summary>All values of a tag; empty if it is missing.</summary>
    public long[] All(int tag) => tags.GetValueOrDefault(tag, []);

    private void Add(ReadOnlySpan<byte> file, int entry, bool little)
    {
        var size = U16(file, entry + 2, little) switch { 1 => 1, 3 => 2, 4 => 4, _ => 0 };
        if (size == 0)
        {
            return;
        }

        long count = U32(file, entry + 4, little);
        var at = count * size <= 4 ? entry + 8L : U32(file, entry + 8, little);
        if (at + (count * size) > file.Length)
        {
            throw DamagedContainerException.CutOff(Name);
        }

        var values = new long[count];
        for (var i = 0; i < count; i++)
        {
            var p = (int)at + (i * size);
            values[i] = size == 1 ? file[p] : size == 2 ? U16(file, p, little) : U32(file, p, little);
        }

        tags[U16(file, entry, little)] = values;
    }

    private static ushort U16(ReadOnlySpan<byte> file, int at, bool little) => little
        ? BinaryPrimitives.ReadUInt16LittleEndian(file[at..])
        : BinaryPrimitives.ReadUInt16BigEndian(file[at..]);

    private static uint U32(ReadOnlySpan<byte> file, int at, bool little) => little
        ? BinaryPrimitives.ReadUInt32LittleEndian(file[at..])
        : BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
}
