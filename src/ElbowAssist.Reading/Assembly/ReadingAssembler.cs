using System.Diagnostics;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Reading.Assembly;

/// <summary>
/// Puts a reading together from landmarks, by a model, by a reader or mixed: lays every measurement of the view, decides
/// what the film can carry, gives each measurement its state and reasons, and asks the rules for prompts. Thread-safe.
/// </summary>
/// <param name="limits">What decides on adequacy.</param>
/// <param name="redraws">How landmarks are laid again; factors are taken from each input.</param>
public sealed class ReadingAssembler(AdequacyLimits limits, RedrawOptions redraws)
{
    /// <summary>Name under which this stage reports its time.</summary>
    public const string Stage = "measurements";

    /// <summary>The assembler with the limits of the project and 2 000 redraws.</summary>
    public static ReadingAssembler Default { get; } = new(AdequacyLimits.Default, RedrawOptions.Default);

    /// <summary>The reading of a film.</summary>
    public FilmReading Assemble(ReadingInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var refusals = Refusals(input);
        if (refusals.Count > 0)
        {
            return Refused(input, refusals);
        }

        return LandmarkSet.Of(input.View.Name) is { } set ? Measured(input, set) : WithoutLines(input);
    }

    private static List<string> Refusals(ReadingInput input)
    {
        var reasons = input.Checks.Where(c => !c.Passed && c.Reason is not null).Select(c => c.Reason!)
            .Where(r => ReasonTable.Default.ScopeOf(r) == ReasonScope.Film);
        return [.. (input.View.Name == View.Unknown ? reasons.DefaultIfEmpty(FilmReasons.ViewNotRecognised) : reasons).Distinct(StringComparer.Ordinal)];
    }

    private static FilmReading Refused(ReadingInput input, IReadOnlyList<string> reasons) =>
        Empty(input, new Adequacy(true, input.Checks, [], []), reasons);

    // An oblique film is recognised and can be looked at, but no line is defined on it.
    private static FilmReading WithoutLines(ReadingInput input)
    {
        IReadOnlyList<string> reasons = [FilmReasons.ObliqueView];
        var names = ViewMeasurements.Lateral.Concat(ViewMeasurements.Ap).Select(m => m.Name).Distinct(StringComparer.Ordinal);
        return Empty(input, new Adequacy(false, input.Checks, [], [.. names.Select(n => new CannotCarry(n, reasons))]), reasons);
    }

    private static FilmReading Empty(ReadingInput input, Adequacy adequacy, IReadOnlyList<string> reasons) => new()
    {
        Tool = input.Tool,
        Models = input.Models,
        Image = input.Image,
        View = input.View,
        Side = input.Side,
        Patient = input.Patient,
        Context = input.Context,
        Adequacy = adequacy,
        Landmarks = [],
        Lines = [],
        Circles = [],
        Measurements = [],
        Evidence = [],
        Prompts = [],
        Reasons = Told([.. reasons, .. Failed(adequacy.Checks)]),
        Timing = input.Timing,
    };

    private FilmReading Measured(ReadingInput input, LandmarkSet set)
    {
        var started = Stopwatch.GetTimestamp();
        var landmarks = FilmLandmarks.Of(input, set, limits);
        var byModel = input.Landmarks.Any(l => l.Source == LandmarkSource.Model);
        var values = FilmMeasuring.Measure(landmarks.Laid, byModel ? redraws with { Factors = input.Calibration, Zones = input.ZoneCorrections } : redraws);
        var facts = new FilmFacts(input, limits, landmarks, values);
        IReadOnlyList<AdequacyCheck> checks = [.. input.Checks, .. facts.Checks, .. Plausibility.Check(landmarks, values, limits)];
        IReadOnlyList<string> everywhere = [.. Failed(checks).Where(IsEverywhere)];
        var assembled = new MeasurementAssembly(input, landmarks, facts, everywhere).Assemble(values);
        var evidence = EvidenceAssembly.Of(input, facts, everywhere);
        var withheld = assembled.Measurements.Where(m => m.State == MeasurementState.Withheld).Select(m => new CannotCarry(m.Name, m.Reasons));
        var unseen = evidence.Where(e => e.Reasons.Count > 0).Select(e => new CannotCarry(e.Evidence.Name, e.Reasons));
        return Empty(input, new Adequacy(false, FiguresOfGiven(checks, assembled.Measurements), CanCarry(assembled, evidence), [.. withheld, .. unseen]), []) with
        {
            Landmarks = landmarks.All,
            Lines = assembled.Lines,
            Circles = assembled.Circles,
            Measurements = assembled.Measurements,
            Evidence = [.. evidence.Select(e => e.Evidence)],
            Prompts = PromptAssembly.Of(input, assembled.Measurements),
            Reasons = Told(
            [
                .. Failed(checks),
                .. assembled.Measurements.SelectMany(m => m.Reasons),
                .. evidence.SelectMany(e => e.Reasons),
            ]),
            Timing = new Dictionary<string, double>(input.Timing, StringComparer.Ordinal)
            {
                [Stage] = Stopwatch.GetElapsedTime(started).TotalMilliseconds,
            },
        };
    }

    // The figure of a check is the value of a measurement here, or gives it away.
    private static readonly Dictionary<string, string> FigureOf = new(StringComparer.Ordinal)
    {
        ["true-lateral.arc-offset"] = "true-lateral.arc-offset",
        ["flexion.departure-from-right-angle"] = "flexion-angle",
    };

    /// <summary>The checks without the figures of measurements that are withheld; what they decided stands.</summary>
    private static IReadOnlyList<AdequacyCheck> FiguresOfGiven(IReadOnlyList<AdequacyCheck> checks, IReadOnlyList<Measurement> measurements)
    {
        var withheld = measurements.Where(m => m.State == MeasurementState.Withheld).Select(m => m.Name).ToHashSet(StringComparer.Ordinal);
        return [.. checks.Select(c => FigureOf.TryGetValue(c.Name, out var name) && withheld.Contains(name) ? c with { Value = null } : c)];
    }

    // A rotated film still carries some measurements; these reasons leave none.
    private static bool IsEverywhere(string reason) =>
        reason is FilmReasons.ResolutionLow or FilmReasons.ShapeImplausible or FilmReasons.UnlikeTraining;

    private static IReadOnlyList<string> CanCarry(
        AssembledMeasurements assembled, IReadOnlyList<(Evidence Evidence, IReadOnlyList<string> Reasons)> evidence) =>
    [
        .. assembled.Measurements.Where(m => m.State != MeasurementState.Withheld).Select(m => m.Name),
        .. evidence.Where(e => e.Reasons.Count == 0).Select(e => e.Evidence.Name),
    ];

    private static IEnumerable<string> Failed(IReadOnlyList<AdequacyCheck> checks) =>
        checks.Where(c => !c.Passed).Select(c => c.Reason).OfType<string>();

    private static IReadOnlyList<Reason> Told(IEnumerable<string> codes) =>
        [.. codes.Distinct(StringComparer.Ordinal).Select(c => ReasonTable.Default[c])];
}
