using ElbowAssist.Imaging.Files;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Metadata.Profiles.Exif;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;

namespace ElbowAssist.Imaging.Tests;

/// <summary>Pixels are held against ImageSharp, an independent decoder.</summary>
public sealed class FilmFileTests
{
    [Theory]
    [InlineData(".png", 16)]
    [InlineData(".png", 8)]
    [InlineData(".tiff", 16)]
    [InlineData(".tiff", 8)]
    public void LosslessFile_GivesTheSamePixelsBack(string extension, int bits)
    {
        var pixels = Pictures.Pattern(61, 47, bits);
        var film = FilmFile.Decode(Pictures.Encode(extension, pixels, 61, 47, bits), "film" + extension);
        Assert.Equal((61, 47, bits), (film.Width, film.Height, film.Facts.BitDepth));
        Assert.True(film.Pixels.SequenceEqual(pixels.Select(p => (ushort)(bits == 8 ? p * 257 : p)).ToArray()));
        Assert.Equal(0, film.Facts.ColouredShare);
    }

    [Theory]
    [InlineData(".png", 16)]
    [InlineData(".tiff", 16)]
    public void LosslessFile_AgreesWithImageSharp(string extension, int bits)
    {
        var file = Pictures.Encode(extension, Pictures.Pattern(61, 47, bits), 61, 47, bits);
        using var other = Image.Load<L16>(file);
        var film = FilmFile.Decode(file, "film" + extension);
        for (var y = 0; y < film.Height; y++)
        {
            for (var x = 0; x < film.Width; x++)
            {
                Assert.Equal(other[x, y].PackedValue, film.Pixels[(y * film.Width) + x]);
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void JpegOrientation_IsAppliedAsImageSharpAppliesIt(int orientation)
    {
        using var picture = Image.LoadPixelData<L8>(Pictures.Pattern(48, 32, 8).Select(v => (byte)v).ToArray(), 48, 32);
        picture.Metadata.ExifProfile = new ExifProfile();
        picture.Metadata.ExifProfile.SetValue(ExifTag.Orientation, (ushort)orientation);
        using var stream = new MemoryStream();
        picture.SaveAsJpeg(stream);
        using var other = Image.Load<L8>(stream.ToArray());
        other.Mutate(m => m.AutoOrient());

        var film = FilmFile.Decode(stream.ToArray(), "film.jpg");

        Assert.Equal((other.Width, other.Height, orientation), (film.Width, film.Height, film.Facts.AppliedOrientation));
        for (var y = 0; y < film.Height; y++)
        {
            for (var x = 0; x < film.Width; x++)
            {
                // Decoders may round the inverse transform differently (ITU-T T.83 allows one step).
                Assert.InRange((film.Pixels[(y * film.Width) + x] / 257) - other[x, y].PackedValue, -2, 2);
            }
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void TiffOrientation_IsApplied(int orientation)
    {
        var stored = Pictures.Pattern(48, 32);
        var file = Pictures.Encode(".tiff", stored, 48, 32, 16);
        var film = FilmFile.Decode(WithTiffOrientation(file, orientation), "film.tiff");
        var quarter = orientation > 4;
        Assert.Equal((quarter ? 32 : 48, quarter ? 48 : 32), (film.Width, film.Height));

        // TIFF 6.0, tag 274: which corner of the shown picture the first stored row and column touch.
        var (x, y) = orientation switch
        {
            1 or 5 => (0, 0),
            2 or 6 => (film.Width - 1, 0),
            3 or 7 => (film.Width - 1, film.Height - 1),
            _ => (0, film.Height - 1),
        };
        Assert.Equal(stored[0], film.Pixels[(y * film.Width) + x]);
        var (dx, dy) = orientation switch { 1 or 4 => (1, 0), 2 or 3 => (-1, 0), 5 or 6 => (0, 1), _ => (0, -1) };
        Assert.Equal(stored[1], film.Pixels[((y + dy) * film.Width) + x + dx]);
    }

    [Fact]
    public void PngOrientation_IsApplied()
    {
        var stored = Pictures.Pattern(48, 32);
        var file = Pictures.Encode(".png", stored, 48, 32, 16);
        byte[] exif = [(byte)'I', (byte)'I', 42, 0, 8, 0, 0, 0, 1, 0, 0x12, 1, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0, 0, 0, 0, 0];
        byte[] turned = [.. file.AsSpan(0, 33), .. Pictures.Chunk("eXIf"u8, exif), .. file.AsSpan(33)];
        var film = FilmFile.Decode(turned, "film.png");
        Assert.Equal((32, 48), (film.Width, film.Height));
        Assert.Equal(stored[0], film.Pixels[31]);
        Assert.Equal(stored[1], film.Pixels[32 + 31]);
    }

    [Fact]
    public void GreyStoredAsColour_IsReadExactlyAndCountsAsGrey()
    {
        var pixels = Pictures.Pattern(40, 30, 8).Select(v => (byte)v).ToArray();
        using var picture = Image.LoadPixelData<L8>(pixels, 40, 30);
        using var colour = picture.CloneAs<Rgba32>();
        using var stream = new MemoryStream();
        colour.SaveAsPng(stream);
        var film = FilmFile.Decode(stream.ToArray(), "film.png");
        Assert.Equal(0, film.Facts.ColouredShare);
        Assert.Equal(pixels.Select(p => (ushort)(p * 257)), film.Pixels.ToArray());
    }

    [Fact]
    public void ColourPhotograph_DecodesAndIsFlagged()
    {
        using var picture = new Image<Rgb24>(64, 64, new Rgb24(180, 120, 90));
        using var stream = new MemoryStream();
        picture.SaveAsJpeg(stream);
        Assert.Equal(1, FilmFile.Decode(stream.ToArray(), "holiday.jpg").Facts.ColouredShare);
    }

    [Fact]
    public void OnePixel_Decodes()
    {
        var film = FilmFile.Decode(Pictures.Encode(".png", [77], 1, 1, 8), "one.png");
        Assert.Equal((1, 1, 77 * 257), (film.Width, film.Height, film.Pixels[0]));
    }

    /// <summary>Inserts the tag into the last slot of the first directory, over one the decoder does not need.</summary>
    private static byte[] WithTiffOrientation(byte[] file, int orientation)
    {
        var little = file[0] == 'I';
        Assert.True(little);
        var at = BitConverter.ToInt32(file, 4);
        int entries = BitConverter.ToUInt16(file, at);
        var copy = file.Concat(new byte[2 + ((entries + 1) * 12) + 4]).ToArray();
        var moved = file.Length + (file.Length & 1);
        copy = [.. file, .. new byte[(file.Length & 1) + 2 + ((entries + 1) * 12) + 4]];
        BitConverter.TryWriteBytes(copy.AsSpan(4), moved);
        BitConverter.TryWriteBytes(copy.AsSpan(moved), (ushort)(entries + 1));
        var target = moved + 2;
        var written = false;
        for (var i = 0; i < entries; i++)
        {
            var entry = file.AsSpan(at + 2 + (i * 12), 12);
            if (!written && BitConverter.ToUInt16(entry) > 274)
            {
                target = WriteOrientation(copy, target, orientation);
                written = true;
            }

            entry.CopyTo(copy.AsSpan(target));
            target += 12;
        }

        return copy;
    }

    private static int WriteOrientation(byte[] copy, int target, int orientation)
    {
        BitConverter.TryWriteBytes(copy.AsSpan(target), (ushort)274);
        BitConverter.TryWriteBytes(copy.AsSpan(target + 2), (ushort)3);
        BitConverter.TryWriteBytes(copy.AsSpan(target + 4), 1);
        BitConverter.TryWriteBytes(copy.AsSpan(target + 8), orientation);
        return target + 12;
    }
}
