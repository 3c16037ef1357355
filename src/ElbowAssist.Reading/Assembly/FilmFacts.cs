using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Reading.Assembly;

/// <summary>Decides which conditions hold of a film, each with its check: figure, limit, reason.</summary>
internal sealed class FilmFacts
{
    private readonly ReadingInput input;
    private readonly AdequacyLimits limits;
    private readonly FilmLandmarks landmarks;
    private readonly double? flexion;
    private readonly double? arcOffset;

    public FilmFacts(ReadingInput input, AdequacyLimits limits, FilmLandmarks landmarks, IReadOnlyList<MeasuredValue> values)
    {
        this.input = input;
        this.limits = limits;
        this.landmarks = landmarks;
        flexion = values.FirstOrDefault(v => v.Definition.Name == "flexion-angle")?.Value;
        arcOffset = values.FirstOrDefault(v => v.Definition.Name == "true-lateral.arc-offset")?.Value;
        Checks = [.. Make()];
    }

    /// <summary>The checks made here.</summary>
    public IReadOnlyList<AdequacyCheck> Checks { get; }

    private Maturity Maturity => MaturityOf.Decide(input.Patient, input.Statements.Maturity);

    private bool OnAp => input.View.Name == View.Ap;

    /// <summary>Reason code why a condition does not hold, or null if it holds.</summary>
    public string? Unmet(FilmCondition condition) => condition switch
    {
        FilmCondition.TrueView => IsRotated ? FilmReasons.FilmRotated : null,
        FilmCondition.FlexedNearRightAngle => flexion switch
        {
            null => FilmReasons.FlexionUnknown,
            { } angle when Math.Abs(angle - 90) > limits["flexion.departure-from-right-angle"] => FilmReasons.FlexionUnsuitable,
            _ => null,
        },
        FilmCondition.FullExtensionAndSupination =>
            input.Statements.FullExtensionAndSupination ? null : FilmReasons.NotStatedExtendedSupinated,
        FilmCondition.HumerusFlatToDetector =>
            input.Statements.HumerusFlatToDetector == false ? FilmReasons.HumerusNotFlat : null,
        FilmCondition.PhysisOpen => IsPhysisClosed ? FilmReasons.PhysisClosed : null,
        FilmCondition.SpacingKnown => landmarks.Laid.Scale.InMillimetres ? null : FilmReasons.SpacingUnknown,
        FilmCondition.AfterReduction => input.Context == FilmContext.AfterReduction ? null : FilmReasons.NotAfterReduction,
        FilmCondition.Adult => Maturity switch
        {
            Maturity.Adult => null,
            Maturity.Unknown => FilmReasons.AgeUnknown,
            _ => FilmReasons.AdultsOnly,
        },
        FilmCondition.SoftTissueUncovered => input.Context == FilmContext.Cast ? FilmReasons.CastOverSoftTissue : HidingSoftTissue,
        FilmCondition.ForearmFilmByHand =>
            input.Statements.ForearmFilm && input.Landmarks.All(l => l.Source == LandmarkSource.Reader)
                ? null
                : FilmReasons.NeedsForearmFilm,
        _ => throw new ArgumentOutOfRangeException(nameof(condition)),
    };

    private bool IsPhysisClosed => input.Patient.AgeMonths is { } age
        ? age >= limits["physis.closed-from"]
        : input.Statements.Maturity == Maturity.Adult;

    // Lines lie along strong edges and say by their spread what an exposure bears; the edge of a fat pad is a faint one.
    private string? HidingSoftTissue => input.Checks.FirstOrDefault(c =>
        !c.Passed && c.Reason is FilmReasons.CastSeen or FilmReasons.ExposureNoisy or FilmReasons.ImageBlurred)?.Reason;

    private bool IsRotated => Checks.Any(c => c.Reason == FilmReasons.FilmRotated && !c.Passed);

    private IEnumerable<AdequacyCheck> Make()
    {
        // Where both arcs can be laid their offset tells rotation from the film itself, and the model's estimate only stops
        // what no film was studied at; elsewhere the estimate must do.
        var limit = limits[OnAp ? "view-error.ap" : arcOffset is null ? "view-error.lateral" : "view-error.lateral.arcs-laid"];
        yield return input.View.ErrorDegrees is { } degrees
            ? Check("view-error", Math.Abs(degrees), limit, Math.Abs(degrees) <= limit, FilmReasons.FilmRotated)
            : new("view-error", null, limit, false, FilmReasons.ViewErrorUnknown);
        if (arcOffset is { } offset)
        {
            var most = limits["true-lateral.arc-offset"];
            yield return Check("true-lateral.arc-offset", offset, most, offset <= most, FilmReasons.FilmRotated);
        }

        if (!OnAp && flexion is { } angle)
        {
            var departure = limits["flexion.departure-from-right-angle"];
            var from = Math.Abs(angle - 90);
            yield return Check("flexion.departure-from-right-angle", from, departure, from <= departure, FilmReasons.FlexionUnsuitable);
        }
    }

    private static AdequacyCheck Check(string name, double value, double limit, bool met, string reason) =>
        new(name, value, limit, met, met ? null : reason);
}
