using ElbowAssist.Geometry;
using ElbowAssist.Models.Checking;
using ElbowAssist.Models.Folders;
using ElbowAssist.Testing;

namespace ElbowAssist.Models.Tests;

/// <summary>
/// Two PyTorch networks of different build, exported by <c>tools/training/foreign</c> as a stranger would: one gives
/// heatmaps, the other points with their spread.
/// </summary>
public sealed class ForeignModelTests
{
    private const int Side = 64;

    [Theory] // The golden cases hold what PyTorch gave.
    [InlineData("foreign-heatmaps")]
    [InlineData("foreign-points")]
    public void Folder_Fits_AndGivesWhatPyTorchGave(string name) => Assert.Empty(ModelCheck.Run(Folder(name)));

    [Theory]
    [InlineData("foreign-heatmaps")]
    [InlineData("foreign-points")]
    public void Network_FindsWhatItWasTrainedToFind(string name)
    {
        using var model = LandmarkModel.Load(ModelFolder.Open(Folder(name)), threads: 1);
        Point bright = new(21.5, 40.25), dark = new(45, 17);
        using var input = model.Rent();
        for (var i = 0; i < Side * Side; i++)
        {
            var at = new Point((i % Side) + 0.5, (i / Side) + 0.5);
            input.Values[i] = (float)(4 * (Spot(at, bright) - Spot(at, dark)));
        }

        var pass = model.Run(input, isMirrored: false);
        Assert.InRange(pass.Proposals[0].Position.DistanceTo(bright), 0, 2);
        Assert.InRange(pass.Proposals[1].Position.DistanceTo(dark), 0, 2);
        Assert.NotNull(pass.Proposals[0].Spread);
    }

    private static double Spot(Point at, Point centre) => Math.Exp(-(at - centre).Dot(at - centre) / 18);

    private static string Folder(string name) => Path.Combine(Repository.Root, "tests", "ElbowAssist.Testing", "ForeignModels", name);
}
