using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Judging;
using ElbowAssist.Pipeline.Proposals;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Runs the view model over the whole film, squeezed into its square.</summary>
internal sealed class ViewStage(ViewModel model, IReadOnlyList<CropPass> passes, int threads)
{
    public ViewLook Run(NormalisedFilm film, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        film = WithPolarity(film);
        var looks = SideBySide.Run(passes.Count, threads, i => Look(film, passes[i]), cancellation).ToList();
        var probabilities = ViewClasses.All.ToDictionary(c => c, c => looks.Average(l => l.Pass.Probabilities[c]), StringComparer.Ordinal);
        double? error = looks.TrueForAll(l => l.Pass.ViewError is null) ? null : looks.Average(l => l.Pass.ViewError?.Degrees ?? 0);
        return new ViewLook(film, new ViewProposal(ModelIdentities.Of(model.Folder), probabilities, error), Locate(looks));
    }

    /// <summary>Where the picture does not tell the polarity, the one that looks more like an elbow is taken.</summary>
    private NormalisedFilm WithPolarity(NormalisedFilm film)
    {
        if (Math.Abs(film.Polarity.Score) >= Polarity.Unsure)
        {
            return film;
        }

        NormalisedFilm[] either = [film, film.Inverted()];
        var looks = SideBySide.Run(either.Length, threads, i => Look(either[i], passes[0]), CancellationToken.None);
        return ViewJudgement.Elbow(looks[1].Pass.Probabilities) > ViewJudgement.Elbow(looks[0].Pass.Probabilities) ? either[1] : film;
    }

    private (ViewPass Pass, Similarity ToFilm) Look(NormalisedFilm film, CropPass pass)
    {
        var side = model.Side;
        var filmToCrop = film.WholeFilmTo(side).Then(pass.Applied(side));
        using var input = model.Rent();
        film.StandardisedCrop(filmToCrop, side, side, input.Values);
        return (model.Run(input), filmToCrop.Inverse);
    }

    private static LocatorPoints Locate(List<(ViewPass Pass, Similarity ToFilm)> looks)
    {
        Point Median(Func<ViewPass, LocatedPoint> of)
        {
            var points = looks.ConvertAll(l => l.ToFilm.Apply(of(l.Pass).Position));
            return new Point(Middle(points.Select(p => p.X)), Middle(points.Select(p => p.Y)));
        }

        return new LocatorPoints(Median(p => p.Shaft), Median(p => p.Joint), Median(p => p.Forearm), Median(p => p.Mark));
    }

    private static double Middle(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
