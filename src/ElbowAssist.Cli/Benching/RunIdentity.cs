using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Cli.Films;
using ElbowAssist.Models;

namespace ElbowAssist.Cli.Benching;

/// <summary>What a bench rests on: another run with the same facts comes to the same figures.</summary>
internal static class RunIdentity
{
    private const string File = "run.json";
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Facts by name.</summary>
    public static IReadOnlyList<(string Name, string Value)> Of(ContestRequest request, FilmDataset dataset, IReadOnlyList<OpenModels> models) =>
    [
        ("program", $"{ThisTool.Identity.Name} {ThisTool.Identity.Version}"),
        ("runtime", $"{RuntimeInformation.FrameworkDescription}, ONNX Runtime {typeof(ModelSet).Assembly.GetReferencedAssemblies().First(a => a.Name == "Microsoft.ML.OnnxRuntime").Version}"),
        ("processor", $"{Processor()}, {RuntimeInformation.ProcessArchitecture}, {Environment.ProcessorCount.ToString(CultureInfo.InvariantCulture)} threads, {RuntimeInformation.OSDescription}"),
        ("data set", $"{Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(request.Dataset)))}: {dataset.Films.Count.ToString(CultureInfo.InvariantCulture)} films, labels {Hash(dataset.LabelFiles)}"),
        ("simulated seeds", Seeds(dataset)),
        .. models.Select(m => ($"models {m.Name}", m.Identity)),
        .. request.Predictions.Select(p => ($"predictions {Path.GetFileName(p)}", Hash([p]))),
        .. request.Readers.Select(p => ($"readers {Path.GetFileName(p)}", Hash([p]))),
        ("limits", Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(LimitsFile.Read().ToJson())))),
        ("view", request.StateView ? "told to the models" : "recognised by the models"),
    ];

    /// <summary>Sees that a folder holds no answers of another bench, and keeps what this one rests on.</summary>
    /// <exception cref="UserErrorException">The folder belongs to another bench.</exception>
    public static void Claim(string folder, IReadOnlyList<(string Name, string Value)> facts, CancellationToken cancellation)
    {
        var now = JsonSerializer.SerializeToUtf8Bytes(facts.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal), Indented);
        var path = Path.Combine(folder, File);
        if (System.IO.File.Exists(path))
        {
            if (Difference(System.IO.File.ReadAllBytes(path), facts) is { } name)
            {
                throw new UserErrorException($"{folder} holds a bench whose {name} differ; name another folder with --out, or remove this one.");
            }

            return;
        }

        OutputFiles.Write(folder, [(File, now)], cancellation);
    }

    private static string? Difference(byte[] before, IReadOnlyList<(string Name, string Value)> facts)
    {
        try
        {
            var kept = JsonSerializer.Deserialize<Dictionary<string, string>>(before) ?? [];
            return facts.FirstOrDefault(f => !kept.TryGetValue(f.Name, out var value) || value != f.Value).Name ?? kept.Keys.FirstOrDefault(k => facts.All(f => f.Name != k));
        }
        catch (JsonException)
        {
            return "facts";
        }
    }

    private static string Hash(IReadOnlyList<string> files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in files)
        {
            hash.AppendData(System.IO.File.ReadAllBytes(file));
        }

        return "sha256 " + Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static string Seeds(FilmDataset dataset)
    {
        var seeds = dataset.Films.Select(f => f.Truth.Simulated?.Seed).OfType<ulong>().ToList();
        return seeds.Count == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{seeds.Min()} to {seeds.Max()}");
    }

    private static string Processor() => System.IO.File.Exists("/proc/cpuinfo")
        ? System.IO.File.ReadLines("/proc/cpuinfo").FirstOrDefault(l => l.StartsWith("model name", StringComparison.Ordinal))?.Split(':', 2)[1].Trim() ?? "unknown processor"
        : "unknown processor";
}
