namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>How the pixels of a transfer syntax are coded.</summary>
internal enum PixelCoding
{
    Native,
    RunLength,
    JpegBaseline,
    JpegLossless,
    JpegLs,
    Jpeg2000,
    HighThroughputJpeg2000,
}

/// <summary>A transfer syntax in scope (PS3.6 table A-1).</summary>
/// <param name="Uid">UID.</param>
/// <param name="Name">Name for messages.</param>
/// <param name="ExplicitVr">Whether the data set states its value representations.</param>
/// <param name="Deflated">Whether the data set is deflated.</param>
/// <param name="Coding">Coding of the pixels.</param>
internal sealed record TransferSyntax(string Uid, string Name, bool ExplicitVr, bool Deflated, PixelCoding Coding)
{
    public const string ExplicitLittleEndianUid = "1.2.840.10008.1.2.1";

    private static readonly TransferSyntax[] Known =
    [
        new("1.2.840.10008.1.2", "Implicit VR Little Endian", false, false, PixelCoding.Native),
        new(ExplicitLittleEndianUid, "Explicit VR Little Endian", true, false, PixelCoding.Native),
        new("1.2.840.10008.1.2.1.99", "Deflated Explicit VR Little Endian", true, true, PixelCoding.Native),
        new("1.2.840.10008.1.2.5", "RLE Lossless", true, false, PixelCoding.RunLength),
        new("1.2.840.10008.1.2.4.50", "JPEG Baseline", true, false, PixelCoding.JpegBaseline),
        new("1.2.840.10008.1.2.4.57", "JPEG Lossless", true, false, PixelCoding.JpegLossless),
        new("1.2.840.10008.1.2.4.70", "JPEG Lossless SV1", true, false, PixelCoding.JpegLossless),
        new("1.2.840.10008.1.2.4.80", "JPEG-LS Lossless", true, false, PixelCoding.JpegLs),
        new("1.2.840.10008.1.2.4.90", "JPEG 2000 Lossless", true, false, PixelCoding.Jpeg2000),
        new("1.2.840.10008.1.2.4.91", "JPEG 2000", true, false, PixelCoding.Jpeg2000),
        new("1.2.840.10008.1.2.4.201", "HTJ2K Lossless", true, false, PixelCoding.HighThroughputJpeg2000),
        new("1.2.840.10008.1.2.4.202", "HTJ2K Lossless RPCL", true, false, PixelCoding.HighThroughputJpeg2000),
        new("1.2.840.10008.1.2.4.203", "HTJ2K", true, false, PixelCoding.HighThroughputJpeg2000),
    ];

    /// <summary>Explicit VR little endian, the only syntax written.</summary>
    public static TransferSyntax ExplicitLittleEndian => Known[1];

    /// <summary>True if pixel data come as fragments.</summary>
    public bool IsEncapsulated => Coding != PixelCoding.Native;

    /// <summary>The syntax of a UID.</summary>
    /// <exception cref="DicomFormatException">The syntax is out of scope.</exception>
    public static TransferSyntax Of(string uid) => Known.FirstOrDefault(s => s.Uid == uid) ??
        throw DicomFormatException.Because(
            $"The file uses transfer syntax {Uids.ForMessage(uid)}, which is not read here; export it as Explicit VR Little Endian from the archive or convert it with gdcmconv --raw.");
}
