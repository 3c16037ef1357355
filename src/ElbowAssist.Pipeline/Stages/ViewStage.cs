using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Runs the view model over the whole film, squeezed into its square, and decides on the view.</summary>
internal sealed class ViewStage(ViewModel model, AdequacyLimits limits, IReadOnlyList<CropPass> passes)
{
    public ViewResult Run(NormalisedFilm film, View? stated, CancellationToken cancellation)
    {
        var looks = new List<(ViewPass Pass, Similarity ToFilm)>();
        foreach (var pass in passes)
        {
            cancellation.ThrowIfCancellationRequested();
            if (looks.Count == 0)
            {
                (film, var first) = FirstLook(film, pass);
                looks.Add(first);
            }
            else
            {
                looks.Add(Look(film, pass));
            }
        }

        var probabilities = ViewClasses.All.ToDictionary(c => c, c => looks.Average(l => l.Pass.Probabilities[c]), StringComparer.Ordinal);
        var view = stated ?? Recognised(probabilities);
        double? error = looks.TrueForAll(l => l.Pass.ViewError is null) ? null : looks.Average(l => l.Pass.ViewError?.Degrees ?? 0);
        return new ViewResult(film, new ViewFinding(view, probabilities, error), Locate(looks), Check(probabilities, stated));
    }

    /// <summary>Where the picture does not tell the polarity, the one that looks more like an elbow is taken.</summary>
    private (NormalisedFilm Film, (ViewPass Pass, Similarity ToFilm) Look) FirstLook(NormalisedFilm film, CropPass pass)
    {
        var look = Look(film, pass);
        if (Math.Abs(film.Polarity.Score) >= Polarity.Unsure)
        {
            return (film, look);
        }

        var inverted = film.Inverted();
        var other = Look(inverted, pass);
        return Elbow(other.Pass.Probabilities) > Elbow(look.Pass.Probabilities) ? (inverted, other) : (film, look);
    }

    private (ViewPass Pass, Similarity ToFilm) Look(NormalisedFilm film, CropPass pass)
    {
        var side = model.Side;
        var filmToCrop = film.WholeFilmTo(side).Then(pass.Applied(side));
        using var input = model.Rent();
        film.StandardisedCrop(filmToCrop, side, side, input.Values);
        return (model.Run(input), filmToCrop.Inverse);
    }

    private View Recognised(Dictionary<string, double> probabilities)
    {
        var best = Views.MaxBy(v => probabilities[v.Class]);
        return probabilities[best.Class] / Math.Max(1e-9, Elbow(probabilities)) >= limits["view.recognised"] ? best.View : View.Unknown;
    }

    private List<AdequacyCheck> Check(Dictionary<string, double> probabilities, View? stated)
    {
        var radiograph = 1 - probabilities[ViewClasses.NotARadiograph];
        var elbow = Elbow(probabilities);
        var checks = new List<AdequacyCheck>
        {
            Checks.AtLeast(limits, "view.radiograph", radiograph, FilmReasons.NotARadiograph),
        };
        if (checks[0].Passed)
        {
            // A reader who states the view has seen an elbow; only a film that is hardly one is refused then.
            checks.Add(Checks.AtLeast(
                limits, stated is null ? "view.elbow" : "view.elbow.stated", elbow / radiograph, FilmReasons.NotAnElbow));
        }

        if (checks[^1].Passed && checks.Count == 2)
        {
            checks.Add(stated is { } view
                ? Checks.AtLeast(limits, "view.stated", Share(probabilities, view) / radiograph, FilmReasons.ViewStatedOtherwise)
                : Checks.AtLeast(limits, "view.recognised", Views.Max(v => probabilities[v.Class]) / elbow, FilmReasons.ViewNotRecognised));
        }

        return checks;
    }

    private static IReadOnlyList<(View View, string Class)> Views { get; } =
        [(View.Lateral, ViewClasses.Lateral), (View.Ap, ViewClasses.Ap), (View.Oblique, ViewClasses.Oblique)];

    private static double Elbow(IReadOnlyDictionary<string, double> probabilities) => Views.Sum(v => probabilities[v.Class]);

    private static double Share(Dictionary<string, double> probabilities, View view) =>
        Views.Where(v => v.View == view).Sum(v => probabilities[v.Class]);

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
