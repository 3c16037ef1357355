using System.Text;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Tests.Dicom.Support;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>The codings left to the image library, coded by GDCM, DCMTK and OpenJPH.</summary>
public sealed class ImageLibraryCodecTests
{
    private static readonly DicomFilmReader Reader = new(new ImageLibrary());

    [ToolTheory("gdcmconv")]
    [InlineData(8, 8, "MONOCHROME2")]
    [InlineData(16, 12, "MONOCHROME2")]
    [InlineData(16, 16, "MONOCHROME1")]
    public void Jpeg2000Lossless_GivesTheSamePixels(int allocated, int stored, string photometric)
    {
        var film = new SampleFilm { BitsAllocated = allocated, BitsStored = stored, Photometric = photometric, Width = 300, Height = 200 };
        using var scratch = new Scratch();
        Tool.Run("gdcmconv", "--j2k", scratch.Write("plain.dcm", film.File()), scratch["coded.dcm"]);

        Assert.True(Pixels(film.File()).Span.SequenceEqual(Pixels(File.ReadAllBytes(scratch["coded.dcm"])).Span));
    }

    [ToolTheory("dcmcjpeg", "dcmdjpeg")]
    [InlineData("MONOCHROME2")]
    [InlineData("MONOCHROME1")]
    public void JpegBaseline_GivesWhatAnotherDecoderGives(string photometric)
    {
        var film = new SampleFilm { BitsAllocated = 8, BitsStored = 8, Width = 160, Height = 120, Photometric = photometric };
        using var scratch = new Scratch();
        Tool.Run("dcmcjpeg", "+eb", "+q", "95", scratch.Write("plain.dcm", film.File()), scratch["coded.dcm"]);
        Tool.Run("dcmdjpeg", scratch["coded.dcm"], scratch["decoded.dcm"]);
        var coded = Reader.Read(File.ReadAllBytes(scratch["coded.dcm"]));

        Assert.True(coded.LossyCompressed);
        Assert.All(
            coded.Pixels.ToArray().Zip(Pixels(File.ReadAllBytes(scratch["decoded.dcm"])).ToArray()),
            p => Assert.InRange((p.First - p.Second) / 257.0, -1.01, 1.01));
    }

    [ToolFact("ojph_compress")]
    public void HighThroughputJpeg2000_GivesTheSamePixels()
    {
        var film = new SampleFilm { Width = 300, Height = 200, BitsStored = 12 };
        using var scratch = new Scratch();
        var values = film.Values();
        scratch.Write("film.pgm", [.. Encoding.ASCII.GetBytes("P5\n300 200\n4095\n"), .. values.SelectMany(v => new[] { (byte)(v >> 8), (byte)v })]);
        Tool.Run("ojph_compress", "-i", scratch["film.pgm"], "-o", scratch["film.j2c"], "-reversible", "true");
        var coded = Encapsulate(film.Dataset(), "1.2.840.10008.1.2.4.201", File.ReadAllBytes(scratch["film.j2c"]));

        Assert.True(Pixels(film.File()).Span.SequenceEqual(Pixels(coded).Span));
    }

    [ToolFact("gdcmconv")]
    public void WithoutTheImageLibrary_TheSentenceNamesTheWayOut()
    {
        using var scratch = new Scratch();
        Tool.Run("gdcmconv", "--j2k", scratch.Write("plain.dcm", new SampleFilm().File()), scratch["coded.dcm"]);

        var exception = Assert.Throws<DicomFormatException>(() => new DicomFilmReader().Read(File.ReadAllBytes(scratch["coded.dcm"])));

        Assert.Contains("Explicit VR Little Endian", exception.Message, StringComparison.Ordinal);
    }

    private static ReadOnlyMemory<ushort> Pixels(byte[] file) => Reader.Read(file).Pixels;

    /// <summary>A file whose pixels are one codestream (PS3.5 A.4); the project itself never writes coded pixels.</summary>
    private static byte[] Encapsulate(DicomDataset film, string syntax, byte[] codestream)
    {
        var padded = codestream.Length % 2 == 0 ? codestream : [.. codestream, 0];
        var header = DicomFile.Write(new DicomDataset(film.Elements.Where(e => e.Tag != Tag.PixelData)));
        var meta = new DatasetBuilder(Encoding.ASCII).Text(Tag.TransferSyntaxUid, syntax).Build();
        var metaBytes = DatasetWriter.Write(meta);
        var body = header[(132 + 12 + BitConverter.ToInt32(header, 140))..];
        return
        [
            .. header[..132], 2, 0, 0, 0, (byte)'U', (byte)'L', 4, 0, .. BitConverter.GetBytes(metaBytes.Length), .. metaBytes, .. body,
            0xE0, 0x7F, 0x10, 0, (byte)'O', (byte)'B', 0, 0, 0xFF, 0xFF, 0xFF, 0xFF,
            0xFE, 0xFF, 0, 0xE0, 0, 0, 0, 0,
            0xFE, 0xFF, 0, 0xE0, .. BitConverter.GetBytes(padded.Length), .. padded,
            0xFE, 0xFF, 0xDD, 0xE0, 0, 0, 0, 0,
        ];
    }
}
