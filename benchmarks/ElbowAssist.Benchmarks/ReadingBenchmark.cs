using BenchmarkDotNet.Attributes;
using ElbowAssist.Anatomy;
using ElbowAssist.Models;
using ElbowAssist.Pipeline;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Benchmarks;

/// <summary>A whole warm reading of a PNG file, with the models of the checkout.</summary>
[MemoryDiagnoser]
public class ReadingBenchmark
{
    private const int WarmUps = 20;
    private readonly TemporaryFolder folder = new();
    private string path;
    private ModelSet models;
    private FilmReader reader;

    [GlobalSetup]
    public void Setup()
    {
        path = folder.Write("film.png", BenchmarkFilm.Png());
        models = ModelSet.Load(Path.Combine(Repository.Root, "models"));
        reader = new FilmReader(models, new ToolIdentity("benchmarks", "0"));
        if (Read().Adequacy.Refused)
        {
            throw new InvalidOperationException("The benchmark film was refused, so a reading would be timed that stops half way.");
        }

        for (var i = 0; i < WarmUps; i++)
        {
            Read();
        }

        Console.WriteLine("Warm, by stage: " + string.Join(", ", Read().Timing.Select(t => FormattableString.Invariant($"{t.Key} {t.Value:F0} ms"))));
    }

    [GlobalCleanup]
    public void Cleanup()
    {
        models.Dispose();
        folder.Dispose();
    }

    [Benchmark]
    public FilmReading Read() => reader.Read(path, new ReadOptions { Patient = new Patient(480, Sex.Female) });
}
