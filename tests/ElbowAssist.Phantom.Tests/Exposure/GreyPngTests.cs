using CsCheck;
using ElbowAssist.Phantom.Output;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class GreyPngTests
{
    [Fact]
    public void EveryPixel_IsReadBackByAnotherDecoder() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[1, 40], Gen.ULong).Sample((width, height, seed) =>
        {
            var random = new Random((int)(seed % int.MaxValue));
            var pixels = Enumerable.Range(0, width * height).Select(_ => (ushort)random.Next(65536)).ToArray();
            using var image = Image.Load<L16>(Encode(pixels, width, height));
            Assert.Equal((width, height), (image.Width, image.Height));
            for (var i = 0; i < pixels.Length; i++)
            {
                Assert.Equal(pixels[i], image[i % width, i / width].PackedValue);
            }
        });

    [Fact]
    public void SamePixels_GiveSameBytes()
    {
        var pixels = Enumerable.Range(0, 64 * 48).Select(i => (ushort)(i * 17)).ToArray();
        Assert.Equal(Encode(pixels, 64, 48), Encode(pixels, 64, 48));
    }

    [Fact]
    public void WrongNumberOfPixels_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Encode(new ushort[10], 3, 3));

    private static byte[] Encode(ushort[] pixels, int width, int height)
    {
        using var stream = new MemoryStream();
        GreyPng.Write(stream, pixels, width, height);
        return stream.ToArray();
    }
}
