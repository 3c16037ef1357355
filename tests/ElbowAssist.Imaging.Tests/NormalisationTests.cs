using CsCheck;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;

namespace ElbowAssist.Imaging.Tests;

public sealed class NormalisationTests
{
    private const int Side = 128;

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.51)]
    [InlineData(0.37)]
    [InlineData(0.13)]
    [InlineData(1.7)]
    public void BrightSpot_LiesWhereTheSimilaritySaysIt(double scale) => Gen.Select(
        Gen.Double[-3, 3], Gen.Bool).Sample((turn, mirrored) =>
    {
        // The spot is off the pixel grid and six crop pixels wide, so its centroid is exact to a small fraction.
        var spot = new Point(210.3, 171.8);
        var width = 6 / scale;
        var film = NormalisedFilm.Of(Films.Of(400, 360, (x, y) =>
            Math.Exp(-(Math.Pow(x - spot.X, 2) + Math.Pow(y - spot.Y, 2)) / (2 * width * width))));
        var toCrop = Similarity.About(spot, turn, scale, mirrored);
        toCrop = toCrop with { Shift = toCrop.Shift + (new Point(61.7, 66.2) - spot) };

        var centre = Centroid(Crop(film, toCrop));

        Assert.InRange(centre.DistanceTo(toCrop.Apply(spot)), 0, 0.06);
    }, iter: 6);

    [Fact]
    public void Ramp_IsWindowedAndStandardisedByHand()
    {
        // The crop shows columns 100 to 228; its window runs over 99 % of them, 126.7 columns about column 164.
        var film = NormalisedFilm.Of(Films.Of(400, 300, (x, _) => x / 400));
        film = film.Polarity.BoneIsDark ? film.Inverted() : film;
        var crop = Crop(film, new Similarity(1, 0, new Vector(-100, -50), false));

        // 128 equal steps have the standard deviation √((128² − 1)/12) = 36.95 steps.
        for (var x = 2; x < Side - 2; x++)
        {
            var expected = (x + 0.5 - 64) / 126.7 / ((36.95 / 126.7) + 0.03);
            Assert.Equal(expected, crop[(40 * Side) + x], 0.02);
        }
    }

    [Fact]
    public void TurnedRoundGreyValues_GiveTheSameCrop()
    {
        var toCrop = Similarity.About(new Point(200, 250), 0.4, 0.3) with { Shift = new Vector(10, 5) };
        var bright = NormalisedFilm.Of(Films.Limb());
        var dark = NormalisedFilm.Of(Films.Limb(inverted: true));
        Assert.False(bright.Polarity.BoneIsDark);
        Assert.True(dark.Polarity.BoneIsDark);
        var (a, b) = (Crop(bright, toCrop), Crop(dark, toCrop));
        Assert.All(a.Zip(b), pair => Assert.Equal(pair.First, pair.Second, 0.01));
    }

    [Fact]
    public void StatedPolarity_Overrides()
    {
        var film = Films.Limb();
        Assert.True(NormalisedFilm.Of(film.With(film.Facts with { BoneIsDark = true })).Polarity.BoneIsDark);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void OutsideTheFilm_IsTheLowEnd(bool inverted)
    {
        var film = NormalisedFilm.Of(Films.Limb(inverted: inverted));
        var crop = Crop(film, new Similarity(1, 0, new Vector(64, 64), false));
        Assert.Equal(crop.Min(), crop[0], 1e-6);
        Assert.Equal(crop[0], crop[(63 * Side) + 127], 1e-6);
    }

    [Fact]
    public void GreyScale_DoesNotMatter()
    {
        var film = Films.Limb();
        var faint = film.Pixels.ToArray().Select(v => (ushort)(2000 + (v / 16))).ToArray();
        var faintFilm = Radiograph.FromPixels(faint, film.Width, film.Height, film.Facts);
        var toCrop = Similarity.About(new Point(200, 250), -0.2, 0.3);
        var (a, b) = (Crop(NormalisedFilm.Of(film), toCrop), Crop(NormalisedFilm.Of(faintFilm), toCrop));
        Assert.All(a.Zip(b), pair => Assert.Equal(pair.First, pair.Second, 0.02));
    }

    [Fact]
    public void Shutters_AreNotPartOfTheField()
    {
        var limb = Films.Limb();
        var film = NormalisedFilm.Of(Films.Of(600, 700, (x, y) =>
            x < 100 || x >= 500 || y < 100 || y >= 600 ? 0 : limb.Pixels[((int)(y - 100) * 400) + (int)(x - 100)] / 65535.0));
        Assert.InRange(film.Field.Top, 95, 105);
        Assert.InRange(film.Field.Bottom, 595, 605);
        Assert.InRange(film.Quality().ExposedShare, 0.25, 0.55);
    }

    [Fact]
    public void WholeFilm_FitsIntoTheSquare() => Gen.Select(Gen.Int[1, 900], Gen.Int[1, 900]).Sample((w, h) =>
    {
        var film = NormalisedFilm.Of(Films.Of(w, h, (x, y) => (x + y) / 1800));
        var toSquare = film.WholeFilmTo(256);
        var (first, last) = (toSquare.Apply(new Point(0, 0)), toSquare.Apply(new Point(w, h)));
        Assert.Equal(256, first.X + last.X, 1e-9);
        Assert.Equal(256, first.Y + last.Y, 1e-9);
        Assert.Equal(256, Math.Max(last.X - first.X, last.Y - first.Y), 1e-9);
        Assert.All(Crop(film, toSquare), v => Assert.True(float.IsFinite(v)));
    }, iter: 40);

    [Fact]
    public void SameFilm_GivesTheSameBytes()
    {
        var toCrop = Similarity.About(new Point(200, 250), 0.4, 0.3);
        Assert.Equal(Crop(NormalisedFilm.Of(Films.Limb()), toCrop), Crop(NormalisedFilm.Of(Films.Limb()), toCrop));
    }

    private static float[] Crop(NormalisedFilm film, Similarity toCrop)
    {
        var crop = new float[Side * Side];
        film.StandardisedCrop(toCrop, Side, Side, crop);
        return crop;
    }

    private static Point Centroid(float[] crop)
    {
        var low = crop.Min();
        double sum = 0, x = 0, y = 0;
        for (var i = 0; i < crop.Length; i++)
        {
            double weight = crop[i] - low;
            sum += weight;
            x += weight * ((i % Side) + 0.5);
            y += weight * ((i / Side) + 0.5);
        }

        return new Point(x / sum, y / sum);
    }
}
