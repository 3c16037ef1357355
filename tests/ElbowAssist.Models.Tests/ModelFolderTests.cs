using System.Text.Json;
using System.Text.Json.Nodes;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;
using ElbowAssist.Testing;
using Json.Schema;

namespace ElbowAssist.Models.Tests;

public sealed class ModelFolderTests : IDisposable
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(ModelFolder.ManifestSchema());
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void WholeFolders_OpenAndFitTheSchema()
    {
        foreach (var path in new[] { ModelFolders.Spots(folder), ModelFolders.Points(folder), ModelFolders.View(folder), ModelFolders.LateralLayout(folder) })
        {
            Assert.Equal(64, ModelFolder.Open(path).Manifest.Onnx.Sha256.Length);
            Assert.True(Fits(path));
        }
    }

    [Fact]
    public void ModelsOfThisProject_FitTheSchemaAndTheirGoldenCases()
    {
        var models = Path.Combine(Repository.Root, "models");
        foreach (var path in Directory.Exists(models) ? ModelFolder.Find(models) : [])
        {
            Assert.True(Fits(path), path);
            Assert.Empty(Checking.ModelCheck.Run(path));
        }
    }

    [Fact]
    public void WrongHash_IsSaid()
    {
        var path = ModelFolders.Spots(folder);
        File.AppendAllText(Path.Combine(path, "model.onnx"), "x");
        AssertSays(path, "SHA-256");
    }

    [Theory]
    [InlineData("schema", "\"elbowassist/model/9\"", "schema")]
    [InlineData("task", "\"poetry\"", "task")]
    [InlineData("views", "[\"skyline\"]", "view")]
    [InlineData("views", "[]", "view")]
    [InlineData("landmarks", "[{\"name\":\"humerus.fossa.roof\",\"mirror\":\"humerus.fossa.roof\"}]", "lacks the landmark humerus.waist")]
    [InlineData("landmarks", "[{\"name\":\"nose\",\"mirror\":\"nose\"}]", "nose")]
    [InlineData("absent", "[]", "lacks the landmark")]
    [InlineData("outputs", "{}", "heatmaps or points")]
    [InlineData("onnx", "{\"file\":\"../../etc/passwd\",\"sha256\":\"00\",\"opset\":17}", "outside")]
    [InlineData("onnx", "{\"file\":\"other.onnx\",\"sha256\":\"00\",\"opset\":17}", "has no other.onnx")]
    [InlineData("input", "{\"name\":\"film\",\"width\":64,\"height\":64,\"channels\":3,\"normalisation\":{\"recipe\":\"standardised-crop\",\"version\":1}}", "grey film")]
    [InlineData("input", "{\"name\":\"film\",\"width\":64,\"height\":64,\"channels\":1,\"normalisation\":{\"recipe\":\"other\",\"version\":1}}", "normalisation")]
    [InlineData("limits", "7", "not valid")]
    public void ManifestThatDoesNotFit_IsSaid(string field, string value, string expected) =>
        AssertSays(ModelFolders.Spots(folder, edit: m => m[field] = JsonNode.Parse(value)), expected);

    [Theory]
    [InlineData("name")]
    [InlineData("training")]
    [InlineData("licence")]
    [InlineData("onnx")]
    public void MissingField_IsNamed(string field) =>
        AssertSays(ModelFolders.Spots(folder, edit: m => m.Remove(field)), field);

    [Theory]
    [InlineData("landmarks", "[{\"name\":\"humerus.fossa.roof\",\"mirror\":\"humerus.fossa.roof\"}]", "shape")]
    [InlineData("outputs", "{\"heatmaps\":{\"name\":\"maps\",\"stride\":2}}", "tensor maps")]
    [InlineData("outputs", "{\"heatmaps\":{\"name\":\"heatmaps\",\"stride\":4}}", "shape")]
    public void NetworkThatDoesNotFit_IsSaidBeforeAnyFilm(string field, string value, string expected)
    {
        var path = ModelFolders.Spots(folder, edit: m =>
        {
            m[field] = JsonNode.Parse(value);
            m["absent"] = new JsonArray([.. Anatomy.Landmarks.LandmarkSet.Lateral.Landmarks.Select(l => (JsonNode)l.Name)]);
        });
        var opened = ModelFolder.Open(path);
        var e = Assert.Throws<ModelFolderException>(() => LandmarkModel.Load(opened, ModelThreads.Batch));
        Assert.Contains(expected, e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NoNetworkAtAll_IsSaid()
    {
        var path = ModelFolders.Spots(folder, edit: m => m["onnx"]!["sha256"] = "8c736521e1a8b1d02bb8f4d4e8ef7d60d6dc9f5e1b0b5ab4f2d3ed5c3a5e9d0f");
        File.WriteAllText(Path.Combine(path, "model.onnx"), "no network");
        var manifest = JsonNode.Parse(File.ReadAllText(Path.Combine(path, "model.json")))!;
        manifest["onnx"]!["sha256"] = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData("no network"u8));
        File.WriteAllText(Path.Combine(path, "model.json"), manifest.ToJsonString());
        var e = Assert.Throws<ModelFolderException>(() => LandmarkModel.Load(ModelFolder.Open(path), 1));
        Assert.Contains("cannot load", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ModelSet_TakesThePreferredModelAndNamesAMissingOne()
    {
        ModelFolders.View(folder);
        ModelFolders.Points(folder, "a-first");
        ModelFolders.Spots(folder, "b-second");
        using (var first = ModelSet.Load(folder.Path))
        {
            Assert.Equal("a-first", first.LandmarksOf(Anatomy.View.Lateral)!.Folder.Manifest.Name);
            Assert.Null(first.LandmarksOf(Anatomy.View.Ap));
            Assert.Equal(first.Sha256, ModelSet.Sha256Of(folder.Path));
        }

        using (var second = ModelSet.Load(folder.Path, preferred: "b-second"))
        {
            Assert.Equal("b-second", second.LandmarksOf(Anatomy.View.Lateral)!.Folder.Manifest.Name);
            Assert.Equal(second.Sha256, ModelSet.Sha256Of(folder.Path, "b-second"));
            Assert.NotEqual(second.Sha256, ModelSet.Sha256Of(folder.Path));
        }

        var e = Assert.Throws<ModelFolderException>(() => ModelSet.Load(folder.Path, preferred: "c-third"));
        Assert.Contains("c-third", e.Message, StringComparison.Ordinal);
        Assert.Throws<ModelFolderException>(() => ModelSet.Load(folder.File("nowhere")));
    }

    [Fact]
    public void SchemaAndReader_RefuseTheSameManifests()
    {
        foreach (var (field, value) in new[] { ("task", "\"poetry\""), ("outputs", "{}"), ("limits", "7"), ("schema", "\"x\""), ("views", "[]") })
        {
            var path = ModelFolders.Spots(folder, edit: m => m[field] = JsonNode.Parse(value));
            Assert.False(Fits(path), field);
            Assert.Throws<ModelFolderException>(() => ModelFolder.Open(path));
        }
    }

    private static bool Fits(string path)
    {
        using var manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(path, "model.json")));
        return Schema.Evaluate(manifest.RootElement).IsValid;
    }

    private static void AssertSays(string path, string expected)
    {
        var e = Assert.Throws<ModelFolderException>(() => ModelFolder.Open(path));
        Assert.StartsWith("Model folder spots ", e.Message, StringComparison.Ordinal);
        Assert.Contains(expected, e.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", e.Message, StringComparison.Ordinal);
    }
}
