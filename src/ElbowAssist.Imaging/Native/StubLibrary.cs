using System.Buffers.Binary;
using System.Text;

namespace ElbowAssist.Imaging.Native;

/// <summary>
/// Writes the smallest ELF64 shared object that a dynamic linker accepts: a name (DT_SONAME), an empty symbol table,
/// nothing to execute. Structure sizes and constants: System V ABI, edition 4.1, and its AMD64 supplement.
/// </summary>
internal static class StubLibrary
{
    private const int HeaderSize = 64;
    private const int ProgramHeaderSize = 56;
    private const int ProgramHeaders = 3;
    private const int DynamicEntries = 7;
    private const int SymbolSize = 24;
    private const int HashSize = 16;

    /// <summary>The bytes of an empty library with this SONAME, for x86-64.</summary>
    public static byte[] Create(string soname)
    {
        var name = Encoding.ASCII.GetBytes(soname);
        const int dynamicAt = HeaderSize + (ProgramHeaders * ProgramHeaderSize) + 8;
        const int symbolsAt = dynamicAt + (DynamicEntries * 16);
        const int hashAt = symbolsAt + SymbolSize;
        const int stringsAt = hashAt + HashSize;
        var stringsSize = name.Length + 2;
        var size = stringsAt + stringsSize;
        var image = new byte[size];

        WriteHeader(image);
        WriteProgramHeader(image, 0, type: 1, at: 0, size, alignment: 0x1000);
        WriteProgramHeader(image, 1, type: 2, at: dynamicAt, DynamicEntries * 16, alignment: 8);
        // PT_GNU_STACK: without it the linker would ask for an executable stack.
        WriteProgramHeader(image, 2, type: 0x6474E551, at: 0, 0, alignment: 16);

        (long Tag, long Value)[] dynamic =
        [
            (14, 1),                // DT_SONAME: offset in the strings
            (4, hashAt),            // DT_HASH
            (5, stringsAt),         // DT_STRTAB
            (6, symbolsAt),         // DT_SYMTAB
            (10, stringsSize),      // DT_STRSZ
            (11, SymbolSize),       // DT_SYMENT
            (0, 0),                 // DT_NULL
        ];
        for (var i = 0; i < dynamic.Length; i++)
        {
            Put64(image, dynamicAt + (i * 16), dynamic[i].Tag);
            Put64(image, dynamicAt + (i * 16) + 8, dynamic[i].Value);
        }

        Put32(image, hashAt, 1);        // one bucket, holding the undefined symbol 0
        Put32(image, hashAt + 4, 1);    // one symbol
        name.CopyTo(image, stringsAt + 1);
        return image;
    }

    private static void WriteHeader(byte[] image)
    {
        ReadOnlySpan<byte> identity = [0x7F, (byte)'E', (byte)'L', (byte)'F', 2, 1, 1];
        identity.CopyTo(image);
        Put16(image, 16, 3);        // ET_DYN
        Put16(image, 18, 62);       // EM_X86_64
        Put32(image, 20, 1);
        Put64(image, 32, HeaderSize);
        Put16(image, 52, HeaderSize);
        Put16(image, 54, ProgramHeaderSize);
        Put16(image, 56, ProgramHeaders);
        Put16(image, 58, 64);
    }

    private static void WriteProgramHeader(byte[] image, int index, uint type, long at, long size, long alignment)
    {
        const int readWrite = 6;    // the linker relocates the dynamic section in place
        var start = HeaderSize + (index * ProgramHeaderSize);
        Put32(image, start, unchecked((int)type));
        Put32(image, start + 4, readWrite);
        Put64(image, start + 8, at);
        Put64(image, start + 16, at);
        Put64(image, start + 24, at);
        Put64(image, start + 32, size);
        Put64(image, start + 40, size);
        Put64(image, start + 48, alignment);
    }

    private static void Put16(byte[] image, int at, short value) =>
        BinaryPrimitives.WriteInt16LittleEndian(image.AsSpan(at), value);

    private static void Put32(byte[] image, int at, int value) =>
        BinaryPrimitives.WriteInt32LittleEndian(image.AsSpan(at), value);

    private static void Put64(byte[] image, int at, long value) =>
        BinaryPrimitives.WriteInt64LittleEndian(image.AsSpan(at), value);
}
