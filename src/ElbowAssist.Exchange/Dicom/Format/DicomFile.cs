using System.IO.Compression;
using System.Text;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>A DICOM file in memory (PS3.10): its transfer syntax and its data set.</summary>
/// <param name="Syntax">Transfer syntax of the data set.</param>
/// <param name="Dataset">The data set.</param>
internal sealed record DicomFile(TransferSyntax Syntax, DicomDataset Dataset)
{
    private const int PreambleLength = 128;

    /// <summary>True if the bytes carry the prefix of a DICOM file.</summary>
    public static bool HasPrefix(ReadOnlySpan<byte> bytes) =>
        bytes.Length >= PreambleLength + 4 && bytes.Slice(PreambleLength, 4).SequenceEqual("DICM"u8);

    /// <summary>Reads a file; one without preamble must begin with its meta information.</summary>
    /// <exception cref="DicomFormatException">Damaged, beyond a limit, or in a syntax out of scope.</exception>
    public static DicomFile Parse(ReadOnlyMemory<byte> bytes, DicomLimits limits)
    {
        if (bytes.Length > limits.MaxBytes)
        {
            throw DicomFormatException.Because($"The file is larger than {limits.MaxBytes} bytes.");
        }

        var start = HasPrefix(bytes.Span) ? PreambleLength + 4
            : bytes.Span.StartsWith((ReadOnlySpan<byte>)[2, 0]) ? 0
            : throw new DicomFormatException("This is not a DICOM file: it has neither the prefix DICM nor meta information.");
        var metaParser = new DatasetParser(bytes[start..], limits);
        var meta = metaParser.ReadRoot(explicitVr: true, onlyGroup: 2);
        var syntax = TransferSyntax.Of(meta.Text(Tag.TransferSyntaxUid) ??
            throw new DicomFormatException("The DICOM file does not state its transfer syntax; export it again with file meta information."));
        var body = bytes[(start + metaParser.Position)..];
        if (syntax.Deflated)
        {
            body = Inflate(body, limits);
        }

        return new(syntax, new DatasetParser(body, limits).ReadRoot(syntax.ExplicitVr));
    }

    /// <summary>The bytes of a file in explicit little endian.</summary>
    public static byte[] Write(DicomDataset dataset)
    {
        var meta = new DatasetBuilder(Encoding.ASCII)
            .Bytes(Tag.FileMetaInformationVersion, [0, 1])
            .Text(Tag.MediaStorageSopClassUid, dataset.Text(Tag.SopClassUid) ?? "")
            .Text(Tag.MediaStorageSopInstanceUid, dataset.Text(Tag.SopInstanceUid) ?? "")
            .Text(Tag.TransferSyntaxUid, TransferSyntax.ExplicitLittleEndianUid)
            .Text(Tag.ImplementationClassUid, Uids.Implementation)
            .Text(Tag.ImplementationVersionName, "ELBOWASSIST")
            .Build();
        var metaBytes = DatasetWriter.Write(meta);
        var length = new DatasetBuilder(Encoding.ASCII)
            .UInt32(Tag.FileMetaInformationGroupLength, (uint)metaBytes.Length)
            .Build();
        return [.. new byte[PreambleLength], .. "DICM"u8, .. DatasetWriter.Write(length), .. metaBytes, .. DatasetWriter.Write(dataset)];
    }

    private static ReadOnlyMemory<byte> Inflate(ReadOnlyMemory<byte> body, DicomLimits limits)
    {
        using var output = new MemoryStream();
        try
        {
            using var source = new MemoryStream(body.ToArray(), writable: false);
            using var inflater = new DeflateStream(source, CompressionMode.Decompress);
            var buffer = new byte[65536];
            for (int read; (read = inflater.Read(buffer)) > 0;)
            {
                if (output.Length + read > limits.MaxBytes)
                {
                    throw DicomFormatException.Because($"The deflated file holds more than {limits.MaxBytes} bytes.");
                }

                output.Write(buffer, 0, read);
            }
        }
        catch (InvalidDataException e)
        {
            throw DicomFormatException.Damaged($"its deflated part cannot be inflated", e);
        }

        return output.GetBuffer().AsMemory(0, (int)output.Length);
    }
}
