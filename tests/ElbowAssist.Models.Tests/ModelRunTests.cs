using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Checking;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;
using ElbowAssist.Testing;

namespace ElbowAssist.Models.Tests;

public sealed class ModelRunTests : IDisposable
{
    private const int Side = 64;
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Spots_AreFoundWithWhatTheNetworkStates()
    {
        using var model = LandmarkModel.Load(ModelFolder.Open(ModelFolders.Spots(folder)), ModelThreads.Interactive);
        var pass = Run(model, Film(new(20, 33), new(47, 12)));
        Assert.InRange(pass.Proposals[0].Position.DistanceTo(new Point(20, 33)), 0, 0.3);
        Assert.InRange(pass.Proposals[1].Position.DistanceTo(new Point(47, 12)), 0, 0.3);
        Assert.Equal(new Covariance(4, 1, 2), pass.Proposals[0].Spread);
        Assert.Equal(1 / (1 + Math.Exp(-2)), pass.Proposals[0].Visibility, 1e-6);
        Assert.Equal(1 / (1 + Math.Exp(2)), pass.Proposals[1].Visibility, 1e-6);
        Assert.Equal(new ViewError(7, 3), pass.ViewError);
        Assert.Single(pass.Features);
    }

    [Fact]
    public void MirroredInput_IsReadThroughTheMirrorRule()
    {
        var path = ModelFolders.Spots(folder, edit: m =>
        {
            m["landmarks"]![0]!["mirror"] = LandmarkNames.HumerusWaist;
            m["landmarks"]![1]!["mirror"] = LandmarkNames.HumerusFossaRoof;
        });
        using var model = LandmarkModel.Load(ModelFolder.Open(path), 1);
        var plain = Run(model, Film(new(20, 33), new(47, 12)));
        var mirrored = Run(model, Film(new(20, 33), new(47, 12)), isMirrored: true);
        Assert.Equal(plain.Proposals[0], mirrored.Proposals[1]);
        Assert.Equal(plain.Proposals[1], mirrored.Proposals[0]);
    }

    [Fact]
    public void Points_AreTakenAsTheyAre()
    {
        using var model = LandmarkModel.Load(ModelFolder.Open(ModelFolders.Points(folder)), 1);
        var pass = Run(model, Film(new(20, 33), new(47, 12)));
        Assert.Equal([new Point(10.5, 20.25), new Point(40, 50)], pass.Proposals.Select(p => p.Position));
        Assert.All(pass.Proposals, p => Assert.Null(p.Spread));
        Assert.Null(pass.ViewError);
    }

    [Fact]
    public void View_GivesProbabilitiesAndLocatorPoints()
    {
        using var model = ViewModel.Load(ModelFolder.Open(ModelFolders.View(folder)), 1);
        using var lease = model.Rent();
        lease.Values.Fill(0.1f);
        var pass = model.Run(lease);
        Assert.Equal(Math.Exp(8) / (Math.Exp(8) + 4), pass.Probabilities["lateral"], 1e-6);
        Assert.Equal(1, pass.Probabilities.Values.Sum(), 1e-6);
        Assert.InRange(pass.Mark.Position.DistanceTo(new Point(185, 150)), 0, 0.2);
        Assert.Equal(new ViewError(6, 3), pass.ViewError);
    }

    [Fact]
    public void ManyThreads_GetTheAnswerOfTheirOwnFilm()
    {
        using var model = LandmarkModel.Load(ModelFolder.Open(ModelFolders.Spots(folder)), ModelThreads.Batch);
        Parallel.For(0, 64, i =>
        {
            var (bright, dark) = (new Point(8 + (i % 40), 10 + (i % 7)), new Point(50 - (i % 30), 45));
            var pass = Run(model, Film(bright, dark));
            Assert.InRange(pass.Proposals[0].Position.DistanceTo(bright), 0, 0.3);
            Assert.InRange(pass.Proposals[1].Position.DistanceTo(dark), 0, 0.3);
        });
    }

    [Fact]
    public void SameInput_GivesTheSameBitsInAnySession()
    {
        var opened = ModelFolder.Open(ModelFolders.Spots(folder));
        using var one = LandmarkModel.Load(opened, 1);
        using var two = LandmarkModel.Load(opened, ModelThreads.Interactive);
        var film = Film(new(20, 33), new(47, 12));
        Assert.Equal(Run(one, film).Proposals, Run(two, film).Proposals);
    }

    [Fact]
    public void GoldenCase_FitsAndDeparturesAreNamed()
    {
        var path = ModelFolders.Spots(folder);
        var film = Film(new(20, 33), new(47, 12));
        folder.Write(Path.Combine("spots", "golden", "input.bin"), MemoryMarshal.AsBytes(film.AsSpan()));
        using (var model = LandmarkModel.Load(ModelFolder.Open(path), 1))
        {
            WriteGolden(model, Run(model, film), shift: 0);
            Assert.Empty(ModelCheck.Run(path));
            WriteGolden(model, Run(model, film), shift: 0.2);
        }

        var finding = Assert.Single(ModelCheck.Run(path));
        Assert.Contains("humerus.fossa.roof", finding, StringComparison.Ordinal);
    }

    [Fact]
    public void FolderWithoutGoldenCase_IsSaid() =>
        Assert.Contains("golden", Assert.Single(ModelCheck.Run(ModelFolders.Spots(folder))), StringComparison.Ordinal);

    private void WriteGolden(LandmarkModel model, LandmarkPass pass, double shift)
    {
        var golden = new JsonObject
        {
            ["tolerance"] = new JsonObject { ["pixels"] = 0.05, ["relative"] = 0.01 },
            ["points"] = new JsonArray([.. model.Landmarks.Zip(pass.Proposals, (n, p) => (JsonNode)new JsonObject
            {
                ["name"] = n, ["x"] = p.Position.X + (n == "humerus.fossa.roof" ? shift : 0), ["y"] = p.Position.Y, ["share"] = p.Share,
            })]),
            ["viewError"] = new JsonObject { ["mean"] = 7.0, ["sd"] = 3.0 },
            ["covariance"] = new JsonArray(new JsonArray(4.0, 1.0, 2.0), new JsonArray(1.0, 0.0, 1.0)),
            ["visibility"] = new JsonArray(2.0, -2.0),
        };
        folder.Write(Path.Combine("spots", "golden", "output.json"), System.Text.Encoding.UTF8.GetBytes(golden.ToJsonString()));
    }

    private static LandmarkPass Run(LandmarkModel model, float[] film, bool isMirrored = false)
    {
        using var lease = model.Rent();
        film.CopyTo(lease.Values);
        return model.Run(lease, isMirrored);
    }

    private static float[] Film(Point bright, Point dark)
    {
        var film = new float[Side * Side];
        for (var i = 0; i < film.Length; i++)
        {
            var at = new Point((i % Side) + 0.5, (i / Side) + 0.5);
            film[i] = (float)(3 * (Math.Exp(-Math.Pow(at.DistanceTo(bright), 2) / 20) - Math.Exp(-Math.Pow(at.DistanceTo(dark), 2) / 20)));
        }

        return film;
    }
}
