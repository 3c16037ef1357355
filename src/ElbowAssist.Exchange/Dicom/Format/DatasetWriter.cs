using System.Buffers;
using System.Buffers.Binary;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>Writes a data set in explicit little endian with defined lengths, tags ascending, values padded to even length.</summary>
internal static class DatasetWriter
{
    public static byte[] Write(DicomDataset dataset)
    {
        var buffer = new ArrayBufferWriter<byte>();
        Write(dataset, buffer);
        return buffer.WrittenSpan.ToArray();
    }

    private static void Write(DicomDataset dataset, ArrayBufferWriter<byte> buffer)
    {
        foreach (var element in dataset.Elements)
        {
            if (element.Fragments is not null)
            {
                throw new NotSupportedException("Coded pixels are never written.");
            }

            if (element.Vr == Vr.SQ)
            {
                WriteSequence(element, buffer);
                continue;
            }

            var value = element.Value.Span;
            var padded = (value.Length + 1) & ~1;
            if (!element.Vr.HasLongLength() && padded > ushort.MaxValue)
            {
                throw new NotSupportedException("A value is too long for its representation.");
            }

            WriteHeader(buffer, element.Tag, element.Vr, (uint)padded);
            buffer.Write(value);
            if (padded > value.Length)
            {
                buffer.Write((ReadOnlySpan<byte>)[element.Vr.Padding()]);
            }
        }
    }

    private static void WriteSequence(DicomElement element, ArrayBufferWriter<byte> buffer)
    {
        var items = new ArrayBufferWriter<byte>();
        foreach (var item in element.Items)
        {
            var content = Write(item);
            WriteTag(items, Tag.Item);
            WriteUInt32(items, (uint)content.Length);
            items.Write(content);
        }

        WriteHeader(buffer, element.Tag, Vr.SQ, (uint)items.WrittenCount);
        buffer.Write(items.WrittenSpan);
    }

    private static void WriteHeader(ArrayBufferWriter<byte> buffer, Tag tag, Vr vr, uint length)
    {
        WriteTag(buffer, tag);
        var name = vr.ToString();
        buffer.Write((ReadOnlySpan<byte>)[(byte)name[0], (byte)name[1]]);
        if (vr.HasLongLength())
        {
            buffer.Write((ReadOnlySpan<byte>)[0, 0]);
            WriteUInt32(buffer, length);
            return;
        }

        BinaryPrimitives.WriteUInt16LittleEndian(buffer.GetSpan(2), (ushort)length);
        buffer.Advance(2);
    }

    private static void WriteTag(ArrayBufferWriter<byte> buffer, Tag tag)
    {
        var span = buffer.GetSpan(4);
        BinaryPrimitives.WriteUInt16LittleEndian(span, (ushort)((uint)tag >> 16));
        BinaryPrimitives.WriteUInt16LittleEndian(span[2..], (ushort)tag);
        buffer.Advance(4);
    }

    private static void WriteUInt32(ArrayBufferWriter<byte> buffer, uint value)
    {
        BinaryPrimitives.WriteUInt32LittleEndian(buffer.GetSpan(4), value);
        buffer.Advance(4);
    }
}
