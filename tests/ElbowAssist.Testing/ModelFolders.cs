using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Testing;

/// <summary>Model folders made of the tiny networks in <c>Onnx</c>, whose answers are known.</summary>
public static class ModelFolders
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>A landmark model that finds the brightest and the darkest place of a 64-pixel film as two lateral landmarks.</summary>
    public static string Spots(TemporaryFolder folder, string name = "spots", Action<JsonObject>? edit = null) => Write(folder, name, "spots", Manifest(
        name, "landmarks", "lateral", 64,
        new
        {
            heatmaps = new { name = "heatmaps", stride = 2 },
            covariance = new { name = "covariance" },
            visibility = new { name = "visibility" },
            viewError = new { name = "view_error" },
            features = new { name = "features" },
        },
        [LandmarkNames.HumerusFossaRoof, LandmarkNames.HumerusWaist]), edit);

    /// <summary>A landmark model that gives the points (10.5, 20.25) and (40, 50) of a 64-pixel film.</summary>
    public static string Points(TemporaryFolder folder, string name = "points", Action<JsonObject>? edit = null) => Write(folder, name, "points", Manifest(
        name, "landmarks", "lateral", 64, new { points = new { name = "points" } },
        [LandmarkNames.HumerusFossaRoof, LandmarkNames.HumerusWaist]), edit);

    /// <summary>A lateral model that gives a fixed elbow in the canonical crop, whatever the film shows.</summary>
    public static string LateralLayout(TemporaryFolder folder, bool rotated = false) => Write(
        folder, "lateral", rotated ? "lateral-layout-rotated" : "lateral-layout", Manifest(
            "layout", "landmarks", "lateral", 256,
            new
            {
                heatmaps = new { name = "heatmaps", stride = 2 },
                covariance = new { name = "covariance" },
                visibility = new { name = "visibility" },
                viewError = new { name = "view_error" },
            },
            [.. LandmarkSet.Lateral.Landmarks.Select(l => l.Name)]), null);

    /// <summary>A view model with a fixed answer: <c>lateral</c>, <c>oblique</c>, <c>unsure</c>, <c>other-joint</c>, <c>no-radiograph</c>.</summary>
    public static string View(TemporaryFolder folder, string answer = "lateral", Action<JsonObject>? edit = null) => Write(folder, "view", "view-" + answer, Manifest(
        "view", "view", "lateral", 256,
        new
        {
            view = new { name = "view", classes = new[] { "lateral", "ap", "oblique", "not-an-elbow", "not-a-radiograph" } },
            locator = new { name = "locator", stride = 4, points = new[] { "shaft", "joint", "forearm", "mark" } },
            viewError = new { name = "view_error" },
        },
        []), edit);

    private static JsonObject Manifest(
        string name, string task, string view, int side, object outputs, IReadOnlyList<string> landmarks)
    {
        var absent = LandmarkSet.Lateral.Landmarks.Select(l => l.Name).Where(n => task == "landmarks" && !landmarks.Contains(n));
        return JsonSerializer.SerializeToNode(new
        {
            schema = "elbowassist/model/1",
            name,
            version = "1.0.0",
            task,
            views = new[] { view },
            onnx = new { file = "model.onnx", sha256 = "", opset = 17 },
            input = new { name = "film", width = side, height = side, channels = 1, normalisation = new { recipe = "standardised-crop", version = 1 } },
            outputs,
            landmarks = landmarks.Select(n => new { name = n, mirror = n }),
            absent,
            calibration = (object?)null,
            evaluation = (object?)null,
            training = new { data = "none; a fixed network for tests", licence = "Apache-2.0" },
            limits = new[] { "For tests only." },
            licence = "Apache-2.0",
        })!.AsObject();
    }

    private static string Write(TemporaryFolder folder, string name, string network, JsonObject manifest, Action<JsonObject>? edit)
    {
        var onnx = File.ReadAllBytes(Path.Combine(Repository.Root, "tests", "ElbowAssist.Testing", "Onnx", network + ".onnx"));
        manifest["onnx"]!["sha256"] = Convert.ToHexStringLower(SHA256.HashData(onnx));
        edit?.Invoke(manifest);
        folder.Write(Path.Combine(name, "model.onnx"), onnx);
        folder.Write(Path.Combine(name, "model.json"), System.Text.Encoding.UTF8.GetBytes(manifest.ToJsonString(Indented)));
        return folder.File(name);
    }
}
