using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;

namespace ElbowAssist.Imaging.Tests;

public sealed class FilmQualityTests
{
    [Theory]
    [InlineData(0.002)]
    [InlineData(0.01)]
    [InlineData(0.05)]
    public void Noise_IsTheStandardDeviationOverTheRange(double sigma)
    {
        var random = new Random(11);
        double Gaussian() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var quality = NormalisedFilm.Of(Films.Of(400, 400, (x, y) => 0.2 + (0.0015 * x) + (sigma * Gaussian()))).Quality();
        Assert.Equal(sigma / (0.6 + (2 * sigma)), quality.Noise, sigma * 0.12);
    }

    [Fact]
    public void Blur_RisesWithTheWidthOfEdges()
    {
        static double Blur(double width) => NormalisedFilm.Of(Films.Of(300, 300, (x, y) =>
            0.5 + (0.4 * Math.Tanh(Math.Sin(x / 11) * 11 / width) * Math.Tanh(Math.Sin(y / 13) * 13 / width)))).Quality().Blur;
        var figures = new[] { 0.5, 2, 5, 12 }.Select(Blur).ToList();
        Assert.Equal(figures.Order(), figures);
        Assert.True(figures[^1] > figures[0] + 0.2);
    }

    [Fact]
    public void BurnedOutBone_IsCounted()
    {
        var quality = NormalisedFilm.Of(Films.Of(400, 400, (x, y) =>
            Math.Abs(x - 200) < 40 ? 1 : 0.1 + (0.3 * Math.Exp(-Math.Abs(x - 200) / 90)))).Quality();
        Assert.Equal(0.2, Math.Max(quality.ClippedBright, quality.ClippedDark), 0.02);
    }

    // Bone of evenly spread grey values from 0.2 to 0.8: a range of 0.48 between 10 and 90 % of them.
    [Theory]
    [InlineData(0.005, false)]
    [InlineData(0.02, false)]
    [InlineData(0.02, true)]
    public void NoiseOfBone_IsTheStandardDeviationOverItsRange_WhateverThePolarity(double sigma, bool inverted)
    {
        var random = new Random(11);
        double Gaussian() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var film = NormalisedFilm.Of(Films.Of(400, 400, (x, y) => 0.2 + (0.0015 * x) + (sigma * Gaussian()), inverted));
        Point[] places = [.. Enumerable.Range(0, 64).Select(i => new Point(25 + (50 * (i % 8)), 25 + (50.0 * (i / 8))))];
        Assert.Equal(sigma / 0.48, film.ExposureOfBone(Similarity.Identity, places, 40)!.Noise, sigma * 0.15);
    }

    [Fact]
    public void BurnedOutPartOfBone_IsItsShareAboutThePlaces()
    {
        var drawn = Films.Of(400, 400, (x, y) => x < 150 ? 1 : 0.3 + (0.0005 * x));
        var film = NormalisedFilm.Of(drawn.With(drawn.Facts with { BoneIsDark = false }));
        Point[] places = [new(150, 200)];
        Assert.Equal(0.5, film.ExposureOfBone(Similarity.Identity, places, 60)!.BurnedOut, 0.02);
        Assert.True(film.ExposureOfBone(Similarity.Identity, [new Point(300, 200)], 60)!.BurnedOut < 0.05);
    }

    [Fact]
    public void BonesOffTheFilm_GiveNoExposure() =>
        Assert.Null(NormalisedFilm.Of(Films.Limb()).ExposureOfBone(Similarity.Identity, [new Point(-500, -500)], 60));

    [Fact]
    public void BlankFilm_HasNoContrastAndNoNoise()
    {
        var quality = NormalisedFilm.Of(Films.Of(100, 80, (_, _) => 0.5)).Quality();
        Assert.Equal((0.0, 0.0, 1.0, 80), (quality.Contrast, quality.Noise, quality.Blur, quality.ShortSide));
    }

    [Fact]
    public void DisplayImage_ShowsBoneBrightWhateverThePolarity()
    {
        var bright = DisplayImage.Of(NormalisedFilm.Of(Films.Limb()), 200);
        var dark = DisplayImage.Of(NormalisedFilm.Of(Films.Limb(inverted: true)), 200);
        Assert.Equal((160, 200), (bright.Width, bright.Height));
        Assert.All(bright.Pixels.ToArray().Zip(dark.Pixels.ToArray()), p => Assert.InRange(p.First - p.Second, -2, 2));
        Assert.NotEqual(bright.Pixels.ToArray(), DisplayImage.Of(NormalisedFilm.Of(Films.Limb()), 200, localContrast: true).Pixels.ToArray());
    }
}
