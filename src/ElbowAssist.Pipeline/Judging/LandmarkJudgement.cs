using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Geometry.Spread;
using ElbowAssist.Models.Merging;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Pipeline.Stages;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Judging;

/// <summary>Which proposals become landmarks, how they spread together, and whether the network knows what it sees.</summary>
internal sealed class LandmarkJudgement
{
    private readonly LandmarkProposals proposals;
    private readonly ModelCalibration calibration;
    private readonly AdequacyLimits limits;
    private readonly ImageFacts film;
    private readonly LandmarkSet set;
    private readonly IReadOnlyList<MergedProposal?> merged;

    public LandmarkJudgement(LandmarkProposals proposals, ModelCalibration calibration, AdequacyLimits limits, ImageFacts film)
    {
        (this.proposals, this.calibration, this.limits, this.film) = (proposals, calibration, limits, film);
        set = LandmarkSet.Of(proposals.View) ?? throw new ArgumentException("A view without landmarks.", nameof(proposals));
        var byName = proposals.Landmarks.ToDictionary(m => m.Name, StringComparer.Ordinal);
        merged = [.. set.Landmarks.Select(d => byName.GetValueOrDefault(d.Name))];
        Landmarks = [.. set.Landmarks.Zip(merged, Place)];
    }

    /// <summary>Landmarks in the order of the view's set; those not seen have no position.</summary>
    public IReadOnlyList<Landmark> Landmarks { get; }

    /// <summary>Landmarks on which passes disagree.</summary>
    public IReadOnlyList<UnusableLandmark> Unusable =>
    [
        .. proposals.Landmarks.Where(m => m.Disagreement is not null && m.Visibility >= limits["landmark.visibility"])
            .Select(m => new UnusableLandmark(m.Name, FilmReasons.PassesDisagree)),
    ];

    /// <summary>Joint covariance in the order of the landmarks, squared film pixels.</summary>
    public JointCovariance Spread()
    {
        MergedProposal?[] placed = [.. merged.Zip(Landmarks, (m, l) => l.Position is null ? null : m)];
        if (calibration.Spread is { } shared)
        {
            return shared.Joint(placed, proposals.FilmToCrop);
        }

        if (proposals.PassJoint is not { } joint)
        {
            return JointCovariance.Independent([.. placed.Select(p => p?.Spread ?? Covariance.Zero)]);
        }

        var channel = proposals.Landmarks.Select((m, i) => (m.Name, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        return joint.Select([.. placed.Select(p => p is null ? -1 : channel[p.Name])]);
    }

    /// <summary>Checks of the proposals; those that rest on a calibration are made only where there is one.</summary>
    public IEnumerable<AdequacyCheck> Checks()
    {
        var share = Landmarks.Zip(merged).Where(l => l.First.Position is not null).Select(l => l.Second!.Share).DefaultIfEmpty(0).Average();
        yield return Stages.Checks.AtLeast("landmark.share", share, Limit("landmark.share"), FilmReasons.UnlikeTraining);
        if (calibration.Features?.Distance(proposals.Features) is { } distance)
        {
            yield return Stages.Checks.AtMost("features.distance", distance, Limit("features.distance"), FilmReasons.UnlikeTraining);
        }

        foreach (var (sign, limit, reason) in Signs)
        {
            if (calibration.Features?.Probability(sign, proposals.Features) is { } probability)
            {
                yield return Stages.Checks.AtMost(limit, probability, Limit(limit), reason);
            }
        }

        foreach (var (figure, reason) in ExposureFigures.Reasons)
        {
            if (proposals.Exposure.TryGetValue(figure, out var value) && limits.Find(OfView(figure)) is { } limit)
            {
                yield return Stages.Checks.AtMost(figure, value, limit.Value, reason);
            }
        }

        var placed = Landmarks.Where(l => l.Position is not null)
            .ToDictionary(l => l.Name, l => proposals.FilmToCrop.Apply(l.Position!.Value), StringComparer.Ordinal);
        foreach (var shape in calibration.Shapes)
        {
            if (shape.Distance(placed) is { } departure)
            {
                yield return Stages.Checks.AtMost("shape." + shape.Name, departure, Limit("shape." + shape.Name), FilmReasons.ShapeImplausible);
            }
        }
    }

    // What a network says is held against limits of its own view.
    private double Limit(string name) => limits[OfView(name)];

    private string OfView(string name) => name + (proposals.View == View.Ap ? ".ap" : ".lateral");

    private static IReadOnlyList<(string Sign, string Limit, string Reason)> Signs { get; } =
        [("metal", "hardware.seen", FilmReasons.HardwareSeen), ("cast", "cast.seen", FilmReasons.CastSeen)];

    /// <summary>A proposal becomes a landmark where it is likelier seen than not, on the film, and one place.</summary>
    private Landmark Place(LandmarkDefinition definition, MergedProposal? proposal)
    {
        if (proposal is null)
        {
            return new Landmark(definition.Name, definition.Kind, null, null, 0, LandmarkSource.Model);
        }

        var p = proposal.Position;
        var onFilm = p.IsFinite && p.X >= 0 && p.Y >= 0 && p.X <= film.Width && p.Y <= film.Height;
        var visibility = onFilm ? proposal.Visibility : 0;
        return visibility >= limits["landmark.visibility"] && proposal.Disagreement is null
            ? new Landmark(definition.Name, definition.Kind, p, proposal.Spread, visibility, LandmarkSource.Model)
            : new Landmark(definition.Name, definition.Kind, null, null, visibility, LandmarkSource.Model);
    }
}
