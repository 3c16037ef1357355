using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Models.Merging;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Runs a landmark model over crops in the canonical pose and merges the passes in film pixels.</summary>
internal sealed class LandmarkStage(LandmarkModel model, AdequacyLimits limits, IReadOnlyList<CropPass> passes)
{
    /// <summary>Proposals of all passes, or null if the locator points give no pose.</summary>
    public LandmarkResult? Run(NormalisedFilm film, LocatorPoints locator, CancellationToken cancellation)
    {
        // The forearm point lies 4 W from the joint by definition; foreshortening only makes the estimate smaller.
        var unitW = locator.Forearm.DistanceTo(locator.Joint) / 4;
        if (CanonicalPose.FilmToCrop(locator, unitW) is not { } pose)
        {
            return null;
        }

        var placed = new List<PlacedPass>();
        foreach (var pass in passes)
        {
            cancellation.ThrowIfCancellationRequested();
            placed.Add(Look(film, pose, pass, Direction(pass.Aim, pose.Apply(locator.Forearm))));
        }

        var merged = PassMerger.Merge(model.Landmarks, placed).ToDictionary(m => m.Name, StringComparer.Ordinal);
        var set = LandmarkSet.Of(model.View)!;
        Landmark[] landmarks = [.. set.Landmarks.Select(d => Place(d, merged.GetValueOrDefault(d.Name), film))];
        var seen = landmarks.Where(l => l.Position is not null).Select(l => merged[l.Name].Share).DefaultIfEmpty(0).Average();
        return new LandmarkResult(
            landmarks,
            PassSpread.Joint(placed, [.. landmarks.Select(l => l.Position is null ? null : merged[l.Name])], model.Landmarks),
            [.. merged.Values.Where(m => m.Disagreement is not null && m.Visibility >= limits["landmark.visibility"])
                .Select(m => new UnusableLandmark(m.Name, FilmReasons.PassesDisagree))],
            placed.TrueForAll(p => p.Pass.ViewError is null) ? null : placed.Average(p => p.Pass.ViewError?.Degrees ?? 0),
            [Checks.AtLeast(limits, "landmark.share", seen, FilmReasons.UnlikeTraining)]);
    }

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

    /// <summary>A proposal becomes a landmark where it is likelier seen than not, on the film, and one place.</summary>
    private Landmark Place(LandmarkDefinition definition, MergedProposal? merged, NormalisedFilm film)
    {
        if (merged is null)
        {
            return new Landmark(definition.Name, definition.Kind, null, null, 0, LandmarkSource.Model);
        }

        var p = merged.Position;
        var onFilm = p.IsFinite && p.X >= 0 && p.Y >= 0 && p.X <= film.Film.Width && p.Y <= film.Film.Height;
        var visibility = onFilm ? merged.Visibility : 0;
        return visibility >= limits["landmark.visibility"] && merged.Disagreement is null
            ? new Landmark(definition.Name, definition.Kind, p, merged.Spread, visibility, LandmarkSource.Model)
            : new Landmark(definition.Name, definition.Kind, null, null, visibility, LandmarkSource.Model);
    }
}
