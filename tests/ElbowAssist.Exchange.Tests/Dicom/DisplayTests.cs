using System.Globalization;
using System.Text;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Tests.Dicom.Support;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>Rescale, window, lookup tables and inversion within one grey level of dcm2pnm (DCMTK).</summary>
public sealed class DisplayTests
{
    public static TheoryData<string, string> Cases() => new()
    {
        { "linear", "+Wi 1" },
        { "linear-narrow", "+Wi 1" },
        { "linear-rescaled", "+Wi 1" },
        { "linear-signed", "+Wi 1" },
        { "sigmoid", "+Wi 1" },
        { "voi-table", "+Wl 1" },
        { "modality-table", "+Wi 1" },
        { "inverted", "+Wi 1" },
        { "inverted-table", "+Wl 1" },
    };

    [ToolTheory("dcm2pnm")]
    [MemberData(nameof(Cases))]
    public void Brightness_IsThatOfAnIndependentRenderer(string name, string options)
    {
        var file = Film(name).File();
        using var scratch = new Scratch();
        Tool.Run("dcm2pnm", [.. options.Split(' '), "+op", scratch.Write("film.dcm", file), scratch["film.pgm"]]);
        var expected = Pgm(scratch["film.pgm"]);

        var film = new DicomFilmReader().Read(file);
        var worst = film.Pixels.ToArray().Zip(expected, (ours, theirs) => Math.Abs((int)Math.Round(ours / 257.0) - theirs)).Max();

        Assert.True(worst <= 1, $"{name}: {worst} grey levels");
        Assert.True(expected.Distinct().Count() > 1, "the picture must not be flat");
    }

    [Fact]
    public void TwoPolarities_OfOneFilm_GiveOnePicture()
    {
        DatasetBuilder Window(DatasetBuilder b, double centre) => b.Decimal(Tag.WindowCenter, centre).Decimal(Tag.WindowWidth, 1000);
        var film = new SampleFilm { With = b => Window(b, 2000) };
        var negative = new SampleFilm
        {
            Photometric = "MONOCHROME1",
            With = b => Window(b, 4095 + 1 - 2000).Bytes(Tag.PixelData, Vr.OW, Words(film.Values().Select(v => 4095 - v))),
        };

        var (a, b) = (new DicomFilmReader().Read(film.File()), new DicomFilmReader().Read(negative.File()));

        Assert.All(a.Pixels.ToArray().Zip(b.Pixels.ToArray()), p => Assert.InRange(p.First - p.Second, -1, 1));
    }

    [Fact]
    public void PaddingAndShutter_AreExcludedAndDark()
    {
        var film = new SampleFilm
        {
            Width = 20,
            Height = 10,
            With = b => b
                .UInt16(Tag.PixelPaddingValue, 4095)
                .Text(Tag.ShutterShape, "RECTANGULAR", "CIRCULAR")
                .Integer(Tag.ShutterLeftVerticalEdge, 3).Integer(Tag.ShutterRightVerticalEdge, 18)
                .Integer(Tag.ShutterUpperHorizontalEdge, 2).Integer(Tag.ShutterLowerHorizontalEdge, 9)
                .Integer(Tag.CenterOfCircularShutter, 5, 10).Integer(Tag.RadiusOfCircularShutter, 6),
        };

        var read = new DicomFilmReader().Read(film.File());
        var values = film.Values();
        for (var i = 0; i < values.Length; i++)
        {
            var (row, column) = ((i / 20) + 1, (i % 20) + 1);
            var outside = values[i] == 4095 || column < 3 || column > 18 || row < 2 || row > 9 ||
                ((row - 5) * (row - 5)) + ((column - 10) * (column - 10)) > 36;
            Assert.Equal(outside, read.Excluded.Span[i]);
            Assert.True(!outside || read.Pixels.Span[i] == 0);
        }
    }

    [Fact]
    public void PolygonalShutter_KeepsWhatTheTriangleEncloses()
    {
        var film = new SampleFilm
        {
            Width = 10,
            Height = 10,
            With = b => b.Text(Tag.ShutterShape, "POLYGONAL").Integer(Tag.VerticesOfThePolygonalShutter, 1, 1, 10, 1, 10, 10),
        };

        var excluded = new DicomFilmReader().Read(film.File()).Excluded.ToArray();

        // Row r keeps the columns up to r: 1 + 2 + … + 9; the last row is the base of the triangle itself.
        Assert.Equal(45, excluded.Take(90).Count(e => !e));
        Assert.True(excluded[9]);
    }

    private static SampleFilm Film(string name) => name switch
    {
        "linear" => new() { With = b => b.Decimal(Tag.WindowCenter, 1800).Decimal(Tag.WindowWidth, 2500) },
        "linear-narrow" => new() { With = b => b.Decimal(Tag.WindowCenter, 1800.5).Decimal(Tag.WindowWidth, 2) },
        "linear-rescaled" => new()
        {
            With = b => b.Decimal(Tag.RescaleSlope, 0.5).Decimal(Tag.RescaleIntercept, -1000)
                .Decimal(Tag.WindowCenter, 0).Decimal(Tag.WindowWidth, 1500),
        },
        "linear-signed" => new() { Signed = true, With = b => b.Decimal(Tag.WindowCenter, -100).Decimal(Tag.WindowWidth, 3000) },
        "sigmoid" => new()
        {
            With = b => b.Decimal(Tag.WindowCenter, 2000).Decimal(Tag.WindowWidth, 1500).Text(Tag.VoiLutFunction, "SIGMOID"),
        },
        "voi-table" => new() { With = b => b.Sequence(Tag.VoiLutSequence, Table(4096, 0, 12, i => (int)(4095 * Math.Sqrt(i / 4095.0)))) },
        "modality-table" => new()
        {
            With = b => b.Sequence(Tag.ModalityLutSequence, Table(4096, 0, 16, i => 65535 - (i * 16)))
                .Decimal(Tag.WindowCenter, 30000).Decimal(Tag.WindowWidth, 50000),
        },
        "inverted" => new()
        {
            Photometric = "MONOCHROME1",
            With = b => b.Decimal(Tag.WindowCenter, 1800).Decimal(Tag.WindowWidth, 2500),
        },
        _ => new()
        {
            Photometric = "MONOCHROME1",
            With = b => b.Sequence(Tag.VoiLutSequence, Table(3000, 500, 10, i => i * 1023 / 2999)),
        },
    };

    private static DicomDataset Table(int count, int first, int bits, Func<int, int> entry) => new DatasetBuilder(Encoding.ASCII)
        .UInt16(Tag.LutDescriptor, count, first, bits)
        .Text(Tag.ModalityLutType, "US")
        .Bytes(Tag.LutData, Words(Enumerable.Range(0, count).Select(entry)))
        .Build();

    private static byte[] Words(IEnumerable<int> values) => [.. values.SelectMany(v => new[] { (byte)v, (byte)(v >> 8) })];

    private static byte[] Pgm(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var (at, fields) = (0, new List<string>());
        while (fields.Count < 4)
        {
            var end = at;
            while (!char.IsWhiteSpace((char)bytes[end]))
            {
                end++;
            }

            if (bytes[at] == '#')
            {
                end = Array.IndexOf(bytes, (byte)'\n', at);
            }
            else
            {
                fields.Add(Encoding.ASCII.GetString(bytes, at, end - at));
            }

            at = end + 1;
        }

        Assert.Equal("P5", fields[0]);
        Assert.Equal(255, int.Parse(fields[3], CultureInfo.InvariantCulture));
        return bytes[at..];
    }
}
