using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Models;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Pipeline.Tests;

/// <summary>A reader over networks whose answers are known.</summary>
internal sealed class ReaderFixture : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly ModelSet models;

    /// <param name="view">Answer of the view model.</param>
    /// <param name="landmarks">Writes the landmark model, or null for none.</param>
    /// <param name="passes">Passes; one of each if null.</param>
    /// <param name="threads">Looks side by side; those of the program if null.</param>
    public ReaderFixture(string view = "lateral", Action<TemporaryFolder>? landmarks = null, PassPlan? passes = null, int? threads = null)
    {
        ModelFolders.View(folder, view);
        (landmarks ?? (f => ModelFolders.LateralLayout(f)))(folder);
        models = ModelSet.Load(folder.Path, threads: threads);
        Reader = new FilmReader(models, new ToolIdentity("tests", "0"), passes ?? PassPlan.Single);
    }

    public FilmReader Reader { get; }

    /// <summary>The canonical pose that follows from the fixed locator points of the view network.</summary>
    public static Similarity FilmToCrop(int width, int height)
    {
        var scale = 256.0 / Math.Max(width, height);
        var shift = new Vector((256 - (width * scale)) / 2, (256 - (height * scale)) / 2);
        var toFilm = new Similarity(scale, 0, shift, false).Inverse;
        var (joint, forearm) = (toFilm.Apply(new Point(140, 160)), toFilm.Apply(new Point(40, 170)));
        return CanonicalPose.FilmToCrop(
            new LocatorPoints(toFilm.Apply(new Point(150, 30)), joint, forearm, toFilm.Apply(new Point(185, 150))),
            unitW: joint.DistanceTo(forearm) / 4)!.Value;
    }

    public void Dispose()
    {
        models.Dispose();
        folder.Dispose();
    }
}
