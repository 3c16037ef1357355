using ElbowAssist.Anatomy;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Stages;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Judging;

/// <summary>Decides on the view, and on whether the film shows an elbow at all.</summary>
internal sealed class ViewJudgement(AdequacyLimits limits)
{
    /// <summary>The likeliest view, whatever the limits say.</summary>
    public static View Likeliest(IReadOnlyDictionary<string, double> probabilities) => Views.MaxBy(v => probabilities[v.Class]).View;

    /// <summary>The view that is recognised clearly enough, else unknown.</summary>
    public View Recognised(IReadOnlyDictionary<string, double> probabilities)
    {
        var best = Views.MaxBy(v => probabilities[v.Class]);
        return probabilities[best.Class] / Math.Max(1e-9, Elbow(probabilities)) >= limits["view.recognised"] ? best.View : View.Unknown;
    }

    /// <summary>The checks on view and content.</summary>
    public IReadOnlyList<AdequacyCheck> Check(IReadOnlyDictionary<string, double> probabilities, View? stated)
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

    /// <summary>Probability that the film shows an elbow.</summary>
    public static double Elbow(IReadOnlyDictionary<string, double> probabilities) => Views.Sum(v => probabilities[v.Class]);

    private static double Share(IReadOnlyDictionary<string, double> probabilities, View view) =>
        Views.Where(v => v.View == view).Sum(v => probabilities[v.Class]);
}
