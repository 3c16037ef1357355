using System.Buffers;
using System.Collections.Concurrent;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Cli.Benching;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline;
using OpenCvSharp;

namespace ElbowAssist.Benchmarks.Benching;

/// <summary>
/// The least a bench can cost: OpenCV decodes each film, ONNX Runtime runs the networks that the bench ran on it, as many
/// times, with nothing between. The networks look at a crop of the first film. One film a thread, sessions shared.
/// </summary>
internal sealed class BareRun : IDisposable
{
    private readonly Dictionary<string, BareNetwork> networks = new(StringComparer.Ordinal);
    private readonly ConcurrentBag<Dictionary<string, BareNetwork>> idle = [];
    private readonly IReadOnlyList<(OpenModels Models, AnswerStore Store)> models;
    private readonly int threads;

    public BareRun(IReadOnlyList<(OpenModels Models, AnswerStore Store)> models, int threads, LabelledFilm first)
    {
        (this.models, this.threads) = (models, threads);
        using var film = FilmFile.Read(first.Path);
        using var normalised = NormalisedFilm.Of(film);
        foreach (var folder in models.SelectMany(m => m.Models.Folders).DistinctBy(f => f.Manifest.Onnx.Sha256, StringComparer.Ordinal))
        {
            var network = networks[folder.Manifest.Onnx.Sha256] = new BareNetwork(folder);
            normalised.StandardisedCrop(normalised.WholeFilmTo(network.Side), network.Side, network.Side, network.Input);
        }

        for (var i = 0; i < threads; i++)
        {
            idle.Add(networks.ToDictionary(n => n.Key, n => n.Value.Beside(), StringComparer.Ordinal));
        }
    }

    /// <summary>Decodes the films and runs the networks.</summary>
    public void Run(IReadOnlyList<(LabelledFilm Film, IReadOnlyList<(string Network, int Passes)> Runs)> films) => Parallel.ForEach(
        Partitioner.Create(films, EnumerablePartitionerOptions.NoBuffering),
        new ParallelOptions { MaxDegreeOfParallelism = threads },
        film =>
        {
            if (!idle.TryTake(out var own))
            {
                throw new InvalidOperationException("More films at once than threads.");
            }

            Decode(film.Film.Path);
            foreach (var (network, passes) in film.Runs)
            {
                for (var pass = 0; pass < passes; pass++)
                {
                    own[network].Run();
                }
            }

            idle.Add(own);
        });

    /// <summary>The networks that the bench ran on a film it has answered: a view model that entrants share once.</summary>
    public IReadOnlyList<(string Network, int Passes)> RunsOf(LabelledFilm film)
    {
        var answered = models.Select(m => (m.Models, Answer: m.Store.Proposed(film))).Where(m => m.Answer is not null).ToList();
        return
        [
            .. answered.Select(m => m.Models.ViewModel).DistinctBy(f => f.Sha256, StringComparer.Ordinal).Select(f => (f.Manifest.Onnx.Sha256, PassPlan.Default.View.Count)),
            .. answered.Where(m => m.Answer!.Proposals.Landmarks is not null)
                .Select(m => (m.Models.LandmarkModel(m.Answer!.Proposals.Landmarks!.View).Manifest.Onnx.Sha256, PassPlan.Default.Landmarks.Count)),
        ];
    }

    public void Dispose()
    {
        foreach (var network in idle.SelectMany(own => own.Values).Concat(networks.Values))
        {
            network.Dispose();
        }
    }

    private static void Decode(string path)
    {
        using var file = File.OpenHandle(path, options: FileOptions.SequentialScan);
        var length = (int)RandomAccess.GetLength(file);
        var bytes = ArrayPool<byte>.Shared.Rent(length);
        _ = RandomAccess.Read(file, bytes.AsSpan(0, length), 0);
        using var pixels = Cv2.ImDecode(bytes.AsSpan(0, length), ImreadModes.Unchanged);
        ArrayPool<byte>.Shared.Return(bytes);
        if (pixels.Empty())
        {
            throw new InvalidOperationException($"{path} cannot be decoded by OpenCV; take films in PNG, JPEG or TIFF.");
        }
    }
}
