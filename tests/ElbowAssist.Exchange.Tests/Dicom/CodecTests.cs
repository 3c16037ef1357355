using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Tests.Dicom.Support;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>Films coded by DCMTK, GDCM and dicom3tools decode to the pixels of the uncoded film.</summary>
public sealed class CodecTests
{
    public static TheoryData<string, string, string> Encoders()
    {
        var data = new TheoryData<string, string, string>
        {
            { "implicit", "dcmconv", "+ti" },
            { "deflated", "dcmconv", "+td" },
            { "rle", "dcmcrle", "" },
            { "sv1", "dcmcjpeg", "+e1" },
            { "jpeg-ls", "dcmcjpls", "+el" },
            { "jpeg-ls-gdcm", "gdcmconv", "--jpegls" },
            { "rle-gdcm", "gdcmconv", "--rle" },
            { "jpeg-gdcm", "gdcmconv", "--jpeg" },
        };
        for (var predictor = 1; predictor <= 7; predictor++)
        {
            data.Add($"predictor-{predictor}", "dcmcjpeg", $"+el +sv {predictor}");
        }

        return data;
    }

    [ToolTheory("dcmconv", "dcmcrle", "dcmcjpeg", "dcmcjpls", "gdcmconv")]
    [MemberData(nameof(Encoders))]
    public void EveryLosslessSyntax_GivesTheSamePixels(string name, string program, string options)
    {
        SampleFilm[] films =
        [
            new(),
            new() { BitsAllocated = 8, BitsStored = 8, Width = 64 },
            new() { BitsStored = 16 },
            new() { BitsStored = 10, Width = 3, Height = 2 },
            new() { Width = 300, Height = 200, Seed = 5, Photometric = "MONOCHROME1" },
        ];
        using var scratch = new Scratch();
        foreach (var film in films)
        {
            var plain = scratch.Write("plain.dcm", film.File());
            if (program == "gdcmconv" && film.Height < 3)
            {
                continue; // GDCM refuses to code an image this small
            }

            Tool.Run(program, [.. options.Split(' ', StringSplitOptions.RemoveEmptyEntries), plain, scratch["coded.dcm"]]);
            var coded = File.ReadAllBytes(scratch["coded.dcm"]);

            Assert.NotEqual(TransferSyntax.ExplicitLittleEndian, DicomFile.Parse(coded, DicomLimits.Default).Syntax);
            Assert.True(
                Pixels(film.File()).Span.SequenceEqual(Pixels(coded).Span), $"{name} of {film.Width} x {film.Height}, {film.BitsStored} bits");
        }
    }

    [ToolTheory("dcmcrle", "dcmcjpeg")]
    [InlineData("dcmcrle", "")]
    [InlineData("dcmcjpeg", "+e1")]
    public void SignedPixels_KeepTheirSign(string program, string options)
    {
        var film = new SampleFilm { Signed = true, BitsStored = 16 };
        using var scratch = new Scratch();
        var plain = scratch.Write("plain.dcm", film.File());
        Tool.Run(program, [.. options.Split(' ', StringSplitOptions.RemoveEmptyEntries), plain, scratch["coded.dcm"]]);

        Assert.True(Pixels(film.File()).Span.SequenceEqual(Pixels(File.ReadAllBytes(scratch["coded.dcm"])).Span));
    }

    private static ReadOnlyMemory<ushort> Pixels(byte[] file) => new DicomFilmReader().Read(file).Pixels;
}
