using BenchmarkDotNet.Attributes;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Imaging.Quality;

namespace ElbowAssist.Benchmarks;

[MemoryDiagnoser]
public class ImagingBenchmark
{
    private readonly float[] crop = new float[256 * 256];
    private byte[] png;
    private Radiograph film;
    private NormalisedFilm normalised;

    [GlobalSetup]
    public void Setup()
    {
        png = BenchmarkFilm.Png();
        film = FilmFile.Decode(png, "film.png");
        normalised = NormalisedFilm.Of(film);
    }

    [Benchmark]
    public Radiograph Decode() => FilmFile.Decode(png, "film.png");

    [Benchmark]
    public NormalisedFilm Normalise() => NormalisedFilm.Of(film);

    [Benchmark]
    public FilmQuality Quality() => normalised.Quality();

    [Benchmark]
    public float FirstCrop()
    {
        var fresh = NormalisedFilm.Of(film);
        fresh.StandardisedCrop(fresh.WholeFilmTo(256), 256, 256, crop);
        return crop[0];
    }

    [Benchmark]
    public float Crop()
    {
        normalised.StandardisedCrop(normalised.WholeFilmTo(256), 256, 256, crop);
        return crop[0];
    }
}
