using ElbowAssist.Testing;
using SkiaSharp;

namespace ElbowAssist.Drawing.Tests;

public sealed class OverlayPngTests
{
    [Fact]
    public void Picture_HoldsTheFilmTheLinesAndWords()
    {
        var film = new GreyPicture(SampleLandmarks.Width, SampleLandmarks.Height, SampleFilm.Pixels());
        using var picture = SKBitmap.Decode(OverlayPng.Write(SampleReadings.Lateral(), new OverlayOptions { Film = film }));
        Assert.Equal(SampleLandmarks.Height, picture.Height);
        Assert.True(picture.Width > SampleLandmarks.Width);

        var inside = Pixels(picture, 0, SampleLandmarks.Width).ToList();
        Assert.Contains(inside, c => c.Blue > c.Red + 80 && c.Blue > 150);
        Assert.Contains(inside, c => c is { Red: > 150, Green: > 150, Blue: > 150 });

        // A default typeface would draw nothing: bright pixels beside the film prove that there are letters.
        Assert.True(Pixels(picture, SampleLandmarks.Width, picture.Width).Count(c => c.Red > 140) > 2000);
    }

    [Fact]
    public void Refusal_DrawsNoColour()
    {
        using var picture = SKBitmap.Decode(OverlayPng.Write(SampleReadings.Refused()));
        Assert.All(Pixels(picture, 0, picture.Width), c => Assert.True(Math.Abs(c.Red - c.Blue) < 12));
    }

    [Fact]
    public void TinyFilm_IsEnlargedUntilItsWordsCanBeRead()
    {
        var reading = SampleReadings.Refused();
        reading = reading with { Image = reading.Image with { Width = 60, Height = 40 } };
        using var picture = SKBitmap.Decode(OverlayPng.Write(reading));
        Assert.InRange(picture.Width, 1000, 4000);
    }

    private static IEnumerable<SKColor> Pixels(SKBitmap picture, int fromX, int toX)
    {
        for (var y = 0; y < picture.Height; y += 2)
        {
            for (var x = fromX; x < toX; x++)
            {
                yield return picture.GetPixel(x, y);
            }
        }
    }
}
