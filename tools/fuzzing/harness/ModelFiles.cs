using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Calibration;

namespace ElbowAssist.Fuzzing;

/// <summary>Model folders of someone else: manifests, and networks that are not what the manifest says.</summary>
internal static class ModelFiles
{
    private static readonly string Folder = Directory.CreateDirectory(
        Path.Combine(Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), $"elbowassist-fuzz-{Environment.ProcessId}")).FullName;

    // The input of the corpus travels with the program, which runs outside the checkout; its first byte names its target.
    private static readonly string Points = Encoding.UTF8.GetString(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "manifest-points")).AsSpan(1));

    /// <summary>A manifest with any network: the folder is turned away or its calibration read.</summary>
    public static void Manifest(byte[] manifest) => Targets.Said<ModelFolderException>(() =>
    {
        File.WriteAllBytes(Path.Combine(Folder, "model.json"), manifest);
        File.WriteAllBytes(Path.Combine(Folder, "model.onnx"), []);
        var folder = ModelFolder.Open(Folder);
        Targets.Said<FormatException>(() => ModelCalibration.Of(folder.Manifest));
        return folder;
    });

    /// <summary>A network under a manifest that states its hash rightly and its shapes as it likes; one that fits is run.</summary>
    public static void Network(byte[] network) => Targets.Said<ModelFolderException>(() =>
    {
        var manifest = JsonNode.Parse(Points)!;
        manifest["onnx"]!["sha256"] = Convert.ToHexStringLower(SHA256.HashData(network));
        File.WriteAllText(Path.Combine(Folder, "model.json"), manifest.ToJsonString());
        File.WriteAllBytes(Path.Combine(Folder, "model.onnx"), network);
        using var model = LandmarkModel.Load(ModelFolder.Open(Folder), threads: 1);
        using var input = model.Rent();
        return model.Run(input, false);
    });
}
