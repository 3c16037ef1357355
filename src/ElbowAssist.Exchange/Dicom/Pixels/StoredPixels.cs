using System.Buffers.Binary;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>Gets the stored values of a film out of any coding in scope.</summary>
internal static class StoredPixels
{
    /// <summary>Stored values row by row, as 16-bit words with the bits outside the value still in place.</summary>
    /// <exception cref="DicomFormatException">The pixels are missing, short, damaged or in a coding nobody can decode here.</exception>
    public static ushort[] Read(DicomFile file, PixelLayout layout, IPixelDecoder? decoder)
    {
        var element = file.Dataset.Find(Tag.PixelData) ??
            throw new DicomFormatException("The file holds no pixels; give the image itself, not a report or presentation state.");
        if (!file.Syntax.IsEncapsulated)
        {
            return element.Fragments is null ? Native(element.Value.Span, layout) : throw Damaged(file);
        }

        var frame = Join(element.Fragments ?? throw Damaged(file));
        return file.Syntax.Coding switch
        {
            PixelCoding.RunLength => Native(RleDecoder.Decode(frame.Span, layout), layout),
            PixelCoding.JpegLossless => Lossless(LosslessJpegDecoder.Decode(frame.Span, layout)),
            PixelCoding.JpegLs => Lossless(JpegLsDecoder.Decode(frame.Span, layout)),
            _ => Foreign(file.Syntax, frame, layout, decoder),
        };

        ushort[] Lossless(ushort[] values) =>
            layout.Samples == 1 ? values : throw DicomFormatException.Because(
                $"The file holds colour in {file.Syntax.Name}; export the film as a grey image.");
    }

    /// <summary>One frame may span several fragments (PS3.5 A.4); the first is the offset table.</summary>
    private static ReadOnlyMemory<byte> Join(IReadOnlyList<ReadOnlyMemory<byte>> fragments)
    {
        if (fragments.Count < 2)
        {
            throw DicomFormatException.Damaged($"its coded pixels are empty");
        }

        if (fragments.Count == 2)
        {
            return fragments[1];
        }

        var joined = new byte[fragments.Skip(1).Sum(f => f.Length)];
        var at = 0;
        foreach (var fragment in fragments.Skip(1))
        {
            fragment.CopyTo(joined.AsMemory(at));
            at += fragment.Length;
        }

        return joined;
    }

    private static ushort[] Native(ReadOnlySpan<byte> bytes, PixelLayout layout)
    {
        if (bytes.Length < (layout.Photometric == "YBR_FULL_422" ? layout.PixelCount * 2 : layout.FrameBytes))
        {
            throw DicomFormatException.Damaged($"it holds fewer pixels than its rows and columns say");
        }

        var values = new ushort[layout.PixelCount];
        if (layout.Samples == 3)
        {
            Luminance.Of(bytes, layout, values);
        }
        else if (layout.BitsAllocated == 8)
        {
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = bytes[i];
            }
        }
        else
        {
            for (var i = 0; i < values.Length; i++)
            {
                values[i] = BinaryPrimitives.ReadUInt16LittleEndian(bytes[(2 * i)..]);
            }
        }

        return values;
    }

    private static ushort[] Foreign(TransferSyntax syntax, ReadOnlyMemory<byte> frame, PixelLayout layout, IPixelDecoder? decoder)
    {
        if (decoder is null)
        {
            throw DicomFormatException.Because($"The file uses {syntax.Name}, which needs the image library; use the command line or the service, or export it as Explicit VR Little Endian.");
        }

        CodestreamSize.Check(frame.Span, layout);
        var decoded = decoder.Decode(frame) ??
            throw DicomFormatException.Because($"The {syntax.Name} pixels cannot be decoded; export the film as Explicit VR Little Endian or JPEG Lossless.");
        return decoded.Width == layout.Width && decoded.Height == layout.Height
            ? decoded.Values.ToArray()
            : throw DicomFormatException.Damaged($"its coded pixels are {decoded.Width} x {decoded.Height}, its header says {layout.Width} x {layout.Height}");
    }

    private static DicomFormatException Damaged(DicomFile file) =>
        DicomFormatException.Damaged($"its pixels are not laid down as {file.Syntax.Name} demands");
}
