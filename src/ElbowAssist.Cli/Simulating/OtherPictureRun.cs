using System.Globalization;
using System.Security.Cryptography;
using ElbowAssist.Anatomy;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Phantom.NotElbow;
using ElbowAssist.Phantom.Output;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Simulating;

/// <summary>
/// Simulates pictures without an elbow, each also turned, mirrored and inverted at once, and writes with each what it shows.
/// Films get the spacing that films of elbows get, and nothing that gives them away.
/// </summary>
internal static class OtherPictureRun
{
    private const string AsTaken = "as-taken";
    private const string Disturbed = "turned-mirrored-inverted";

    public static ExitCode Run(SimulateRequest request, CancellationToken cancellation)
    {
        using var simulators = new ThreadLocal<OtherPictureSimulator>(() => new OtherPictureSimulator());
        var lines = Enumerable.Range(0, request.Count).Select(i => request.FirstSeed + (ulong)i).AsParallel().AsOrdered()
            .WithCancellation(cancellation)
            .WithDegreeOfParallelism(Environment.ProcessorCount)
            .WithMergeOptions(ParallelMergeOptions.NotBuffered)
            .Select(seed => Write(request, Picture(seed), cancellation));
        foreach (var line in lines)
        {
            Console.Out.WriteLine(line);
        }

        return ExitCode.Done;

        OtherPicture Picture(ulong seed) => request.Subject == Subject.NearMiss
            ? simulators.Value!.NearMiss(seed, request.Size, request.Options.Adequacy)
            : OtherPictureSimulator.NotRadiograph(seed, request.Size);
    }

    private static string Write(SimulateRequest request, OtherPicture picture, CancellationToken cancellation)
    {
        var stem = string.Create(CultureInfo.InvariantCulture, $"{picture.Seed}-{picture.Shows}");
        OutputFiles.Write(
            request.OutputFolder,
            [.. Files(stem, picture, AsTaken), .. Files($"{stem}-{Disturbed}", picture.TurnedMirroredInverted(), Disturbed)],
            cancellation);
        return $"{stem}.png: simulated, no elbow, and the same turned, mirrored and inverted";
    }

    private static IEnumerable<(string Name, byte[] Content)> Files(string stem, OtherPicture picture, string version)
    {
        var name = stem + ".png";
        using var stream = new MemoryStream();
        GreyPng.Write(stream, picture.Pixels, picture.Size, picture.Size);
        var png = stream.ToArray();
        if (picture.PixelMm is { } spacing)
        {
            yield return (name + SidecarJson.Suffix, SidecarJson.Write(new FilmFacts("sidecar") { RowSpacingMm = spacing, ColumnSpacingMm = spacing }));
        }

        yield return (stem + ".truth.json", TruthJson.Write(Truth(name, picture, version, Convert.ToHexStringLower(SHA256.HashData(png)))));
        yield return (name, png);
    }

    private static TruthFile Truth(string name, OtherPicture picture, string version, string sha256) => new()
    {
        Image = new ImageFacts(
            name, picture.Size, picture.Size, picture.PixelMm, picture.PixelMm, picture.PixelMm is null ? "none" : "simulated, magnification corrected", sha256),
        View = new ViewFinding(View.Unknown, new Dictionary<string, double>(StringComparer.Ordinal), null),
        Side = Side.Unknown,
        Patient = Patient.Unknown,
        Context = FilmContext.Unknown,
        Landmarks = [],
        NotElbow = new NotElbowFacts(picture.Seed, picture.Shows, version),
    };
}
