using System.Security.Cryptography;
using System.Text.Json;
using ElbowAssist.Geometry;

namespace ElbowAssist.Models.Folders;

/// <summary>A model folder whose manifest is complete and whose ONNX file has the stated hash.</summary>
public sealed class ModelFolder
{
    private ModelFolder(string path, ModelManifest manifest, byte[] onnx, string sha256)
    {
        Sha256 = sha256;
        Path = path;
        Manifest = manifest;
        Onnx = onnx;
    }

    /// <summary>Path of the folder.</summary>
    public string Path { get; }

    /// <summary>The manifest.</summary>
    public ModelManifest Manifest { get; }

    /// <summary>SHA-256 over manifest and network.</summary>
    public string Sha256 { get; }

    /// <summary>The ONNX file; the bytes that were hashed are the bytes that run.</summary>
    internal byte[] Onnx { get; }

    /// <summary>The JSON Schema of manifests, as text.</summary>
    public static string ManifestSchema()
    {
        using var stream = typeof(ModelFolder).Assembly.GetManifestResourceStream("model.schema.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>Reads the manifest and checks it and the hash of the network.</summary>
    /// <exception cref="ModelFolderException">Something is missing, damaged or does not fit.</exception>
    public static ModelFolder Open(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var text = ReadBytes(path, "model.json", InputLimits.ManifestBytes);
        var manifest = Parse(path, text);
        ManifestRules.Check(path, manifest);
        var onnx = ReadBytes(path, manifest.Onnx.File, InputLimits.NetworkBytes);
        var actual = Convert.ToHexStringLower(SHA256.HashData(onnx));
        if (!string.Equals(actual, manifest.Onnx.Sha256, StringComparison.OrdinalIgnoreCase))
        {
            throw new ModelFolderException(path, $"has a {manifest.Onnx.File} whose SHA-256 is not the one in model.json; fetch the folder again.");
        }

        return new ModelFolder(path, manifest, onnx, Convert.ToHexStringLower(SHA256.HashData([.. SHA256.HashData(text), .. SHA256.HashData(onnx)])));
    }

    /// <summary>Folders with a manifest, below a folder of models, in the order of their names.</summary>
    /// <exception cref="ModelFolderException">The folder does not exist.</exception>
    public static IReadOnlyList<string> Find(string modelsFolder) => Directory.Exists(modelsFolder)
        ? [.. Directory.EnumerateDirectories(modelsFolder)
            .Where(f => File.Exists(System.IO.Path.Combine(f, "model.json")))
            .Order(StringComparer.Ordinal)]
        : throw new ModelFolderException(modelsFolder, "does not exist; name the folder that holds the models.");

    private static ModelManifest Parse(string path, byte[] bytes)
    {
        try
        {
            return JsonSerializer.Deserialize<ModelManifest>(bytes, ModelManifest.JsonOptions) is not { } manifest
                ? throw new ModelFolderException(path, "has an empty model.json.")
                : HoldsNothing(manifest)
                    ? throw new ModelFolderException(path, "has a model.json with null where something must stand.")
                    : manifest;
        }
        catch (JsonException e)
        {
            var where = string.IsNullOrEmpty(e.Path) || e.Path == "$" ? "" : $" at {e.Path}";
            var what = e.Message.Contains("missing required", StringComparison.Ordinal)
                ? $"lacks {e.Message[(e.Message.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim().TrimEnd('.')}{where}"
                : $"is not valid{where}";
            throw new ModelFolderException(path, $"has a model.json that {what}.", e);
        }
    }

    // The parser leaves null out of members, but not out of lists, and leaves out nothing that has a default.
    private static bool HoldsNothing(ModelManifest manifest) =>
        manifest.Onnx is null || manifest.Onnx.File is null || manifest.Onnx.Sha256 is null || manifest.Input is null || manifest.Input.Normalisation is null ||
        manifest.Outputs is null || manifest.Views.Any(v => v is null) || manifest.Absent.Any(a => a is null) || manifest.Landmarks.Any(l => l?.Name is null);

    private static byte[] ReadBytes(string folder, string file, long most)
    {
        var path = System.IO.Path.Combine(folder, file);
        try
        {
            if (new FileInfo(path).Length > most)
            {
                throw new ModelFolderException(folder, $"has a {file} that is too large.");
            }

            return File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new ModelFolderException(folder, $"has no {file}.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ModelFolderException(folder, $"has a {file} that cannot be opened.", e);
        }
    }
}
