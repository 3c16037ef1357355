using System.Globalization;
using System.Security.Cryptography;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Phantom;
using ElbowAssist.Phantom.Mesh;
using ElbowAssist.Phantom.Output;

namespace ElbowAssist.Cli.Simulating;

/// <summary>Simulates films side by side and writes each with its sidecar and its truth.</summary>
internal static class SimulateRun
{
    private const string CocoFile = "coco.json";

    public static ExitCode Run(SimulateRequest request, CancellationToken cancellation)
    {
        if (request.Subject != Subject.Elbow)
        {
            return OtherPictureRun.Run(request, cancellation);
        }

        var bones = request.BonesFolder is { } folder ? Bones(folder) : null;
        using var simulators = new ThreadLocal<FilmSimulator>(() => new FilmSimulator());
        var seeds = Enumerable.Range(0, request.Count).Select(i => request.FirstSeed + (ulong)i);
        var films = seeds.SelectMany(seed => request.Views.Select(view => (Seed: seed, View: view))).AsParallel().AsOrdered()
            .WithCancellation(cancellation)
            .WithDegreeOfParallelism(Environment.ProcessorCount)
            .WithMergeOptions(ParallelMergeOptions.NotBuffered)
            .Select(f => WriteFilm(request, simulators.Value!.Simulate(Elbow(f.Seed), f.View, request.Options, request.Size), cancellation));
        var labelled = new List<CocoFilm>();
        foreach (var (line, coco) in films)
        {
            Console.Out.WriteLine(line);
            if (coco is not null)
            {
                labelled.Add(coco);
            }
        }

        OutputFiles.Write(request.OutputFolder, [(CocoFile, CocoKeypoints.Write(labelled))], cancellation);
        return ExitCode.Done;

        ElbowCase Elbow(ulong seed) => bones?.Sample(seed, request.Options) ?? Simulation.Sample(seed, request.Options);
    }

    /// <summary>Registers bones from files and says how well the built-in elbow fits them.</summary>
    private static MeshElbow Bones(string folder)
    {
        try
        {
            var bones = BoneFolder.Load(folder);
            foreach (var d in bones.Distances)
            {
                Console.Out.WriteLine(FormattableString.Invariant(
                    $"{d.Bone}: surface within {d.Mean:0.00} mm of the fitted built-in bone on average, {d.Percentile95:0.00} mm over 95 % of it, {d.Largest:0.00} mm at most"));
            }

            return bones;
        }
        catch (Exception e) when (e is InvalidDataException or IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException(e.Message, ExitCode.Unreadable);
        }
    }

    private static (string Line, CocoFilm? Coco) WriteFilm(SimulateRequest request, SimulatedFilm film, CancellationToken cancellation)
    {
        var truth = film.Truth;
        var view = Vocabularies.View.WordOf(truth.View);
        var stem = string.Create(CultureInfo.InvariantCulture, $"{truth.Seed}-{view}");
        var name = $"{stem}.png";
        var png = Png(film);
        var file = TruthMapping.Of(film, name, Convert.ToHexStringLower(SHA256.HashData(png)));
        OutputFiles.Write(
            request.OutputFolder,
            [
                (name + SidecarJson.Suffix, SidecarJson.Write(Sidecar(film))),
                (stem + ".truth.json", TruthJson.Write(file)),
                (name, png),
            ],
            cancellation);
        var injuries = truth.Injuries.Count == 0 ? "no injury" : string.Join(", ", truth.Injuries);
        return (
            string.Create(CultureInfo.InvariantCulture, $"{name}: simulated, {truth.AgeMonths} months, {Vocabularies.Sex.WordOf(truth.Sex)}, {injuries}"),
            LandmarkSet.Of(truth.View) is null ? null : new CocoFilm(name, film.Width, film.Height, truth.View, Landmarks(file)));
    }

    private static byte[] Png(SimulatedFilm film)
    {
        using var stream = new MemoryStream();
        GreyPng.Write(stream, film.Pixels, film.Width, film.Height);
        return stream.ToArray();
    }

    private static FilmFacts Sidecar(SimulatedFilm film) => new("sidecar")
    {
        RowSpacingMm = film.PixelMm,
        ColumnSpacingMm = film.PixelMm,
        AgeMonths = film.Truth.AgeMonths,
        Sex = film.Truth.Sex,
        Side = film.Truth.Side,
        Context = film.Context,
        View = film.Truth.View,
    };

    private static IReadOnlyList<Landmark> Landmarks(TruthFile truth) =>
        [.. truth.Landmarks.Select(l => new Landmark(l.Name, l.Kind, l.Position, null, l.Visibility, LandmarkSource.Reader))];
}
