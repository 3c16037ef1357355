using System.Buffers.Binary;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>
/// Reads a data set in little endian (PS3.5 chapter 7). Values stay slices of the file; nothing is allocated in
/// proportion to a length that the file merely claims.
/// </summary>
internal sealed class DatasetParser(ReadOnlyMemory<byte> data, DicomLimits limits)
{
    private const uint Undefined = 0xFFFF_FFFF;
    private int position;
    private int count;

    /// <summary>Bytes read so far.</summary>
    public int Position => position;

    /// <summary>Reads elements up to the end of the data, or up to the first whose group differs from <paramref name="onlyGroup"/>.</summary>
    public DicomDataset ReadRoot(bool explicitVr, int? onlyGroup = null) =>
        ReadElements(data.Length, explicitVr, delimited: false, depth: 0, parent: null, onlyGroup);

    private DicomDataset ReadElements(
        int end, bool explicitVr, bool delimited, int depth, DicomDataset? parent, int? onlyGroup = null)
    {
        if (depth > limits.MaxDepth)
        {
            throw DicomFormatException.Because($"The file nests sequences deeper than {limits.MaxDepth} levels.");
        }

        var elements = new Dictionary<Tag, DicomElement>();
        var dataset = new DicomDataset(elements, parent);
        while (position < end)
        {
            var start = position;
            var tag = ReadTag(end);
            if (onlyGroup is { } group && (uint)tag >> 16 != group)
            {
                position = start;
                return dataset;
            }

            if (tag == Tag.ItemDelimitation && delimited)
            {
                ReadLength32(end);
                return dataset;
            }

            var element = ReadElement(tag, end, explicitVr, depth, dataset);
            Count();
            if (((uint)tag & 0xFFFF) == 0 && onlyGroup is null)
            {
                continue; // group lengths are retired and often wrong
            }

            if (!elements.TryAdd(tag, element))
            {
                throw DicomFormatException.Damaged($"attribute {Name(tag)} appears twice");
            }

            if (depth == 0 && tag == Tag.PixelData)
            {
                return dataset; // signatures and padding after the pixels are of no use here
            }
        }

        return delimited ? throw DicomFormatException.Damaged($"an item has no end") : dataset;
    }

    private DicomElement ReadElement(Tag tag, int end, bool explicitVr, int depth, DicomDataset dataset)
    {
        if ((uint)tag >> 16 == 0xFFFE)
        {
            throw DicomFormatException.Damaged($"a delimiter stands where an attribute should");
        }

        var (vr, length) = ReadHeader(tag, end, explicitVr);
        if (tag == Tag.PixelData && length == Undefined)
        {
            return DicomElement.Encapsulated(tag, vr, ReadFragments(end));
        }

        if (vr == Vr.SQ || length == Undefined)
        {
            // UN of undefined length is an implicit sequence (PS3.5 6.2.2).
            return DicomElement.Sequence(tag, ReadItems(length, end, explicitVr && vr == Vr.SQ, depth + 1, dataset));
        }

        return DicomElement.Of(tag, vr, Take(length, end, tag));
    }

    private (Vr Vr, uint Length) ReadHeader(Tag tag, int end, bool explicitVr)
    {
        if (!explicitVr)
        {
            var length = ReadLength32(end);
            var known = VrDictionary.Of(tag);
            return (known == Vr.UN && length == Undefined ? Vr.SQ : known, length);
        }

        Need(4, end);
        var span = data.Span[position..];
        if (!VrRules.TryParse(span[0], span[1], out var vr))
        {
            throw DicomFormatException.Damaged($"attribute {Name(tag)} has no value representation");
        }

        position += 4;
        return (vr, vr.HasLongLength() ? ReadLength32(end) : BinaryPrimitives.ReadUInt16LittleEndian(span[2..]));
    }

    private List<DicomDataset> ReadItems(uint length, int end, bool explicitVr, int depth, DicomDataset parent)
    {
        var delimited = length == Undefined;
        var stop = delimited ? end : checked(position + Fit(length, end));
        var items = new List<DicomDataset>();
        while (position < stop)
        {
            var tag = ReadTag(stop);
            var itemLength = ReadLength32(stop);
            Count();
            if (tag == Tag.SequenceDelimitation && delimited)
            {
                return items;
            }

            if (tag != Tag.Item)
            {
                throw DicomFormatException.Damaged($"a sequence holds something that is no item");
            }

            var itemDelimited = itemLength == Undefined;
            var itemEnd = itemDelimited ? stop : position + Fit(itemLength, stop);
            items.Add(ReadElements(itemEnd, explicitVr, itemDelimited, depth, parent));
        }

        return delimited ? throw DicomFormatException.Damaged($"a sequence has no end") : items;
    }

    private List<ReadOnlyMemory<byte>> ReadFragments(int end)
    {
        var fragments = new List<ReadOnlyMemory<byte>>();
        while (true)
        {
            var tag = ReadTag(end);
            var length = ReadLength32(end);
            Count();
            if (tag == Tag.SequenceDelimitation)
            {
                return fragments;
            }

            if (tag != Tag.Item || length == Undefined)
            {
                throw DicomFormatException.Damaged($"the coded pixels are not made of fragments");
            }

            fragments.Add(Take(length, end, Tag.PixelData));
        }
    }

    private Tag ReadTag(int end)
    {
        Need(4, end);
        var span = data.Span[position..];
        position += 4;
        return (Tag)(((uint)BinaryPrimitives.ReadUInt16LittleEndian(span) << 16) |
            BinaryPrimitives.ReadUInt16LittleEndian(span[2..]));
    }

    private uint ReadLength32(int end)
    {
        Need(4, end);
        var value = BinaryPrimitives.ReadUInt32LittleEndian(data.Span[position..]);
        position += 4;
        return value;
    }

    private ReadOnlyMemory<byte> Take(uint length, int end, Tag tag)
    {
        if (length > (uint)(end - position))
        {
            throw DicomFormatException.Damaged($"attribute {Name(tag)} ends after the file or its item does");
        }

        var value = data.Slice(position, (int)length);
        position += (int)length;
        return value;
    }

    private int Fit(uint length, int end) => length <= (uint)(end - position)
        ? (int)length
        : throw DicomFormatException.Damaged($"a sequence or item ends after the file or its enclosing item does");

    private void Need(int bytes, int end)
    {
        if (end - position < bytes)
        {
            throw DicomFormatException.Damaged($"it ends in the middle of an attribute");
        }
    }

    private void Count()
    {
        if (++count > limits.MaxElements)
        {
            throw DicomFormatException.Because($"The file holds more than {limits.MaxElements} attributes and items.");
        }
    }

    private static string Name(Tag tag) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"({(uint)tag >> 16:X4},{(uint)tag & 0xFFFF:X4})");
}
