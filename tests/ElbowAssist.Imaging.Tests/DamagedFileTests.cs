using CsCheck;
using ElbowAssist.Imaging.Files;

namespace ElbowAssist.Imaging.Tests;

/// <summary>Whatever the bytes, a file becomes a radiograph or one sentence.</summary>
public sealed class DamagedFileTests
{
    private static readonly byte[] Png16 = Pictures.Encode(".png", Pictures.Pattern(64, 48), 64, 48, 16);
    private static readonly byte[] Jpeg = Pictures.Encode(".jpg", Pictures.Pattern(64, 48, 8), 64, 48, 8);
    private static readonly byte[] Progressive = Pictures.Encode(".jpg", Pictures.Pattern(64, 48, 8), 64, 48, 8, 2, 1);
    private static readonly byte[] Tiff = Pictures.Encode(".tiff", Pictures.Pattern(64, 48), 64, 48, 16);

    private static readonly byte[][] Signatures =
    [
        [0x89, 0x50, 0x4E, 0x47, 13, 10, 26, 10], [0xFF, 0xD8, 0xFF], [0x49, 0x49, 42, 0, 8, 0, 0, 0], [],
    ];

    public static TheoryData<string, byte[]> Files => new()
    {
        { "film.png", Png16 }, { "film.jpg", Jpeg }, { "progressive.jpg", Progressive }, { "film.tiff", Tiff },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void CutFile_IsRefused(string name, byte[] file)
    {
        for (var length = 0; length < file.Length; length += 1 + (file.Length / 200))
        {
            var e = Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(file.AsMemory(0, length), name));
            AssertIsOneSentence(e, name);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void FlippedBytes_GiveAPictureOrASentence(string name, byte[] file) =>
        Gen.Select(Gen.Int[0, file.Length - 1], Gen.Byte).Array[1, 6].Sample(
            changes =>
            {
                var copy = (byte[])file.Clone();
                foreach (var (at, value) in changes)
                {
                    copy[at] = value;
                }

                DecodeOrSay(copy, name);
            },
            iter: 1500);

    [Theory]
    [MemberData(nameof(Files))]
    public void RemovedBytes_GiveAPictureOrASentence(string name, byte[] file) =>
        Gen.Select(Gen.Int[0, file.Length - 1], Gen.Int[1, 400]).Sample(
            cut => DecodeOrSay([.. file.AsSpan(0, cut.Item1), .. file.AsSpan(Math.Min(file.Length, cut.Item1 + cut.Item2))], name),
            iter: 500);

    [Fact]
    public void FlippedByteOfPng_IsAlwaysRefused() => Gen.Int[0, Png16.Length - 1].Sample(
        at =>
        {
            var copy = (byte[])Png16.Clone();
            copy[at] ^= 0x10;
            Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(copy, "film.png"));
        },
        iter: 500);

    [Fact]
    public void RandomBytesAfterASignature_GiveAPictureOrASentence() => Gen.Select(
        Gen.Int[0, Signatures.Length - 1],
        Gen.Byte.Array[0, 300]).Sample(t => DecodeOrSay([.. Signatures[t.Item1], .. t.Item2], "noise.bin"), iter: 2000);

    [Fact]
    public void PngWhoseImageDataEndsEarly_IsRefused()
    {
        var raw = new byte[200 * 101];
        new Random(3).NextBytes(raw);
        for (var row = 0; row < 200; row++)
        {
            raw[row * 101] = 0;
        }

        var whole = Pictures.Png(100, 200, 8, 0, Pictures.Deflate(raw));
        Assert.Equal(200, FilmFile.Decode(whole, "whole.png").Height);
        var half = Pictures.Png(100, 200, 8, 0, Pictures.Deflate(raw[..(100 * 101)]));
        Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(half, "half.png"));
        var cut = Pictures.Png(100, 200, 8, 0, Pictures.Deflate(raw)[..9000]);
        Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(cut, "cut.png"));
    }

    [Fact]
    public void JpegWhoseScanEndsEarly_IsRefused()
    {
        byte[] cut = [.. Jpeg.AsSpan(0, Jpeg.Length * 2 / 3), 0xFF, 0xD9];
        Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(cut, "cut.jpg"));
    }

    [Fact]
    public void HugeHeader_IsRefusedBeforeDecoding()
    {
        // 20 000 × 20 000 black pixels deflate to a third of a megabyte.
        var bomb = Pictures.Png(20_000, 20_000, 8, 0, Pictures.Deflate(new byte[20_001 * 20_000]));
        var before = GC.GetAllocatedBytesForCurrentThread();
        var e = Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(bomb, "bomb.png"));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1 << 20);
        Assert.Contains("20000 × 20000", e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(int.MaxValue, int.MaxValue)]
    [InlineData(int.MaxValue, 1)]
    [InlineData(1, int.MaxValue)]
    public void ImpossibleSizes_AreRefused(int width, int height) =>
        Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(Pictures.Png(width, height, 16, 6, new byte[50]), "size.png"));

    [Theory]
    [InlineData("")]
    [InlineData("This is a text file.")]
    [InlineData("GIF89a")]
    [InlineData("BM")]
    public void OtherContent_IsRefused(string text) => AssertIsOneSentence(
        Assert.Throws<UnreadableFilmException>(() => FilmFile.Decode(System.Text.Encoding.ASCII.GetBytes(text), "other.png")),
        "other.png");

    [Fact]
    public void MissingFileAndFolder_AreRefused()
    {
        AssertIsOneSentence(Assert.Throws<UnreadableFilmException>(() => FilmFile.Read("/nowhere/film.png")), "film.png");
        var folder = Directory.CreateTempSubdirectory("films");
        Assert.Throws<UnreadableFilmException>(() => FilmFile.Read(folder.FullName));
        folder.Delete();
    }

    private static void DecodeOrSay(byte[] file, string name)
    {
        try
        {
            var film = FilmFile.Decode(file, name);
            Assert.Equal(film.Width * film.Height, film.Pixels.Length);
        }
        catch (UnreadableFilmException e)
        {
            AssertIsOneSentence(e, name);
        }
    }

    private static void AssertIsOneSentence(UnreadableFilmException e, string name)
    {
        Assert.StartsWith(name + " ", e.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", e.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("\n", e.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", e.Message, StringComparison.Ordinal);
    }
}
