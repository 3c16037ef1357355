using ElbowAssist.Phantom.NotRadiograph;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class PlainImagesTests
{
    public static TheoryData<PlainImageKind> Kinds => [.. Enum.GetValues<PlainImageKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void SameSeed_SameImage_AndAnotherSeedAnother(PlainImageKind kind)
    {
        var first = PlainImages.Make(3, 48, kind);
        Assert.Equal(48 * 48, first.Length);
        Assert.Equal(first, PlainImages.Make(3, 48, kind));
        Assert.NotEqual(first, PlainImages.Make(4, 48, kind));
    }

    [Theory]
    [InlineData(PlainImageKind.TextPage)]
    [InlineData(PlainImageKind.Photograph)]
    [InlineData(PlainImageKind.Screen)]
    [InlineData(PlainImageKind.Noise)]
    public void PicturesThatShowSomething_HaveContrast(PlainImageKind kind)
    {
        var pixels = PlainImages.Make(8, 64, kind);
        Assert.True(pixels.Max() - pixels.Min() > 10000);
    }

    [Fact]
    public void TinySize_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => PlainImages.Make(1, 8));
}
