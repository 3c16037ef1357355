using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Judging;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>
/// Calibrates a landmark model. On one split likeness is learned and limits are chosen, and both are frozen; on another,
/// over the films that those limits accept, spread, intervals and zone probabilities are fitted.
/// </summary>
/// <param name="tool">The program.</param>
public sealed class CalibrationRun(ToolIdentity tool)
{
    // Enough for an interval's ends within a few percent, at a fifth of the time.
    private static readonly RedrawOptions Redraws = RedrawOptions.Default with { Draws = 1000 };

    private const int Rounds = 3;

    /// <summary>Learns likeness on every second film and chooses limits on the others.</summary>
    /// <param name="films">The split that chooses limits, all views.</param>
    /// <param name="view">View of the model.</param>
    /// <param name="limits">Limits so far.</param>
    /// <param name="origin">What films they are, in words.</param>
    public (ModelCalibration Likeness, AdequacyLimits Limits) ChooseLimits(
        IReadOnlyList<CalibrationFilm> films, View view, AdequacyLimits limits, string origin)
    {
        var (learn, choose) = Halves(Of(films, view));
        var likeness = Likeness(learn, view) with { Spread = SpreadFit.Of(learn, LandmarkSet.Of(view)!) };
        var chosen = LimitChoice.Of(Judged(choose, likeness, limits), view, origin);
        return (likeness with { Spread = null }, limits.With(chosen));
    }

    /// <summary>What likeness is learned from when no limits are chosen.</summary>
    public static ModelCalibration Likeness(IReadOnlyList<CalibrationFilm> films, View view) => ModelCalibration.None with
    {
        Features = FeatureFit.Of(films),
        Shapes = ShapeFit.Of(films, LandmarkSet.Of(view)!),
    };

    /// <summary>Fits spread, intervals and zones on films that the limits accept.</summary>
    /// <param name="films">The calibration split, all views.</param>
    /// <param name="view">View of the model.</param>
    /// <param name="limits">Frozen limits.</param>
    /// <param name="likeness">Likeness learned on the other split; null to learn it on these films.</param>
    /// <param name="origin">What films they are, in words.</param>
    public ModelCalibration Fit(
        IReadOnlyList<CalibrationFilm> films, View view, AdequacyLimits limits, ModelCalibration? likeness, string origin)
    {
        var own = Of(films, view);
        var calibration = likeness ?? Likeness(own, view);
        var accepted = Accepted(Judged(own, calibration, limits));
        calibration = calibration with { Spread = SpreadFit.Of([.. accepted.Select(a => a.Film)], LandmarkSet.Of(view)!) };
        for (var round = 0; round < Rounds; round++)
        {
            // What is withheld for its spread depends on the factors, and they on what is not withheld.
            accepted = Accepted(Judged(own, calibration, limits));
            calibration = calibration with { Intervals = IntervalFit.Of(accepted, calibration) };
        }

        accepted = Accepted(Judged(own, calibration, limits));
        var seeds = own.Select(f => f.Truth.Simulated?.Seed).OfType<ulong>().ToList();
        return calibration with
        {
            Zones = ZoneFit.Of(accepted),
            Split = new CalibrationSplit(
                origin, seeds.Count == 0 ? null : seeds.Min(), seeds.Count == 0 ? null : seeds.Max(), own.Count, accepted.Count),
        };
    }

    private static List<CalibrationFilm> Of(IReadOnlyList<CalibrationFilm> films, View view) =>
        [.. films.Where(f => f.Truth.View.Name == view && f.Proposed.Proposals.Landmarks?.View == view)];

    private static (List<CalibrationFilm> Learn, List<CalibrationFilm> Choose) Halves(List<CalibrationFilm> films) => (
        [.. films.Where((_, i) => int.IsEvenInteger(i))],
        [.. films.Where((_, i) => !int.IsEvenInteger(i))]);

    private List<(CalibrationFilm Film, FilmReading Reading)> Judged(
        List<CalibrationFilm> films, ModelCalibration calibration, AdequacyLimits limits)
    {
        var judge = new FilmJudge(tool, limits, Redraws);
        return [.. films.AsParallel().AsOrdered().Select(f => (
            f, judge.Judge(f.Proposed.Image, f.Proposed.Options, f.Proposed.Proposals, calibration)))];
    }

    private static List<(CalibrationFilm Film, FilmReading Reading)> Accepted(
        List<(CalibrationFilm Film, FilmReading Reading)> judged) => [.. judged.Where(j => !j.Reading.Adequacy.Refused)];
}
