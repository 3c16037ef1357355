using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Testing;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using Xunit.Abstractions;

namespace ElbowAssist.Imaging.Tests;

/// <summary>Films under open licences kept beside the checkout; looked at, never learned from.</summary>
public sealed class RealFilmTests(ITestOutputHelper output)
{
    [SharedDataFact("films")]
    public void EveryFilm_DecodesLikeImageSharp()
    {
        foreach (var path in Paths())
        {
            var film = FilmFile.Read(path);
            using var other = SixLabors.ImageSharp.Image.Load<L8>(path);
            Assert.Equal((other.Width, other.Height), (film.Width, film.Height));
            Assert.InRange(film.Facts.ColouredShare, 0, 0.1);
        }
    }

    [SharedDataFact("films")]
    public void Polarity_TurnsWithTheGreyValues()
    {
        foreach (var path in Paths())
        {
            var film = FilmFile.Read(path);
            var inverted = Radiograph.FromPixels(
                film.Pixels.ToArray().Select(v => (ushort)(65535 - v)).ToArray(), film.Width, film.Height, film.Facts);
            var (a, b) = (NormalisedFilm.Of(film), NormalisedFilm.Of(inverted));
            output.WriteLine(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Path.GetFileName(path)}: {a.Polarity.Score:F2} {b.Polarity.Score:F2}"));
            Assert.Equal(a.Polarity.Score, -b.Polarity.Score, 0.15);
        }
    }

    [SharedDataFact("films/elbow")]
    public void ElbowFilms_ShowBoneBright() => Assert.All(
        Paths().Where(p => p.Contains("elbow", StringComparison.Ordinal)),
        p => Assert.False(NormalisedFilm.Of(FilmFile.Read(p)).Polarity.BoneIsDark));

    private static IEnumerable<string> Paths() =>
        Directory.EnumerateFiles(SharedData.Find("films")!, "*.jpg", SearchOption.AllDirectories).Order(StringComparer.Ordinal);
}
