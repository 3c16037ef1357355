using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Models.Merging;
using ElbowAssist.Pipeline.Proposals;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Runs a landmark model over crops in the canonical pose and merges the passes in film pixels.</summary>
/// <param name="model">The model.</param>
/// <param name="passes">Its passes.</param>
/// <param name="threads">Threads of one film.</param>
/// <param name="withJoint">Whether the joint covariance over the passes is worked out, which a calibrated model does not need.</param>
internal sealed class LandmarkStage(LandmarkModel model, IReadOnlyList<CropPass> passes, int threads, bool withJoint)
{
    /// <summary>Proposals of all passes, or null if the locator points give no pose.</summary>
    public LandmarkProposals? Run(NormalisedFilm film, LocatorPoints locator, CancellationToken cancellation)
    {
        // The forearm point lies 4 W from the joint by definition; foreshortening only makes the estimate smaller.
        var unitW = locator.Forearm.DistanceTo(locator.Joint) / 4;
        if (CanonicalPose.FilmToCrop(locator, unitW) is not { } pose)
        {
            return null;
        }

        var forearm = pose.Apply(locator.Forearm);
        var placed = SideBySide.Run(passes.Count, threads, i => Look(film, pose, passes[i], Direction(passes[i].Aim, forearm)), cancellation).ToList();

        var merged = PassMerger.Merge(model.Landmarks, placed);
        return new LandmarkProposals(
            ModelIdentities.Of(model.Folder),
            model.View,
            pose,
            placed.TrueForAll(p => p.Pass.ViewError is null) ? null : placed.Average(p => p.Pass.ViewError?.Degrees ?? 0),
            merged,
            withJoint ? PassSpread.Joint(placed, merged, model.Landmarks) : null,
            Features(placed))
        {
            Exposure = ExposureFigures.Of(film, pose, merged, unitW),
        };
    }

    private static double[] Features(List<PlacedPass> placed) =>
        [.. Enumerable.Range(0, placed[0].Pass.Features.Count).Select(i => placed.Average(p => (double)p.Pass.Features[i]))];

    private static Vector Direction(PassAim aim, Point forearmInCrop)
    {
        const double middle = CanonicalPose.CropSide / 2.0;
        var forearm = forearmInCrop - new Point(middle, middle);
        return aim switch
        {
            PassAim.Forearm when forearm.Length > 0 => forearm.Unit,
            _ => default,
        };
    }

    private PlacedPass Look(NormalisedFilm film, Similarity pose, CropPass pass, Vector aim)
    {
        var side = model.Side;
        var fitted = Similarity.About(new Point(0, 0), 0, side / (double)CanonicalPose.CropSide);
        var filmToCrop = pose.Then(fitted).Then(pass.Applied(side, aim));
        using var input = model.Rent();
        film.StandardisedCrop(filmToCrop, side, side, input.Values);
        return new PlacedPass(model.Run(input, pass.Mirrored), filmToCrop.Inverse, side);
    }
}
