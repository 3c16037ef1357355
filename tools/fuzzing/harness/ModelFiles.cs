using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using ElbowAssist.Models;
using ElbowAssist.Models.Checking;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Calibration;

namespace ElbowAssist.Fuzzing;

/// <summary>Model folders of someone else: manifests, and networks that are not what the manifest says.</summary>
internal static class ModelFiles
{
    private static readonly string Points = Encoding.UTF8.GetString(Shipped("manifest-points"));
    private static readonly byte[] PointsNetwork = Shipped("network-points");

    /// <summary>A manifest with any network: the folder is turned away or its calibration read.</summary>
    public static void Manifest(byte[] manifest) => Targets.Said<ModelFolderException>(() =>
    {
        var folder = ModelFolder.Open(Written(manifest, []));
        Targets.Said<FormatException>(() => ModelCalibration.Of(folder.Manifest));
        return folder;
    });

    /// <summary>A network under a manifest that states its hash rightly and its shapes as it likes; one that fits is run.</summary>
    public static void Network(byte[] network) => Targets.Said<ModelFolderException>(() =>
    {
        using var model = LandmarkModel.Load(ModelFolder.Open(With(network)), threads: 1);
        using var input = model.Rent();
        return model.Run(input, false);
    });

    /// <summary>What a golden case is said to give.</summary>
    public static void Golden(byte[] output)
    {
        var folder = With(PointsNetwork);
        Scratch.Write("model/golden/input.bin", new byte[sizeof(float) * ModelFolder.Open(folder).Manifest.Input.Width * ModelFolder.Open(folder).Manifest.Input.Height]);
        Scratch.Write("model/golden/output.json", output);
        _ = ModelCheck.Run(folder);
    }

    private static string With(byte[] network)
    {
        var manifest = JsonNode.Parse(Points)!;
        manifest["onnx"]!["sha256"] = Convert.ToHexStringLower(SHA256.HashData(network));
        return Written(Encoding.UTF8.GetBytes(manifest.ToJsonString()), network);
    }

    private static string Written(byte[] manifest, byte[] network)
    {
        Scratch.Write("model/model.onnx", network);
        return Path.GetDirectoryName(Scratch.Write("model/model.json", manifest))!;
    }

    // Inputs of the corpus travel with the program, which runs outside the checkout; their first byte names their target.
    private static byte[] Shipped(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, name))[1..];
}
