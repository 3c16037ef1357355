using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Pipeline.Stages;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline.Judging;

/// <summary>
/// Makes a reading of proposals: applies the limits and a model's calibration. It runs no network, so that limits can be
/// chosen and models calibrated on proposals that were written down once. Thread-safe.
/// </summary>
/// <param name="tool">The program, named in every reading.</param>
/// <param name="limits">What decides on adequacy.</param>
/// <param name="redraws">How landmarks are laid again; the default if null.</param>
public sealed class FilmJudge(ToolIdentity tool, AdequacyLimits limits, RedrawOptions? redraws = null)
{
    private readonly ReadingAssembler assembler = new(limits, redraws ?? RedrawOptions.Default);
    private readonly ViewJudgement views = new(limits);

    /// <summary>The reading.</summary>
    /// <param name="image">The film.</param>
    /// <param name="options">What is known of it beyond its pixels.</param>
    /// <param name="proposals">What image and networks say.</param>
    /// <param name="calibration">Calibration of the landmark model.</param>
    public FilmReading Judge(ImageFacts image, ReadOptions options, FilmProposals proposals, ModelCalibration calibration) =>
        Assemble(Input(image, options, proposals, calibration));

    /// <summary>The reading assembled from an input.</summary>
    internal FilmReading Assemble(ReadingInput input) => assembler.Assemble(input);

    /// <summary>What a reading is assembled from.</summary>
    internal ReadingInput Input(ImageFacts image, ReadOptions options, FilmProposals proposals, ModelCalibration calibration)
    {
        var input = new ReadingInput
        {
            Tool = tool,
            Image = image,
            View = new ViewFinding(options.View ?? View.Unknown, new Dictionary<string, double>(StringComparer.Ordinal), null),
            Side = options.Side,
            Patient = options.Patient,
            Context = options.Context,
            Statements = options.Statements,
            Marks = options.Marks,
            Checks = QualityStage.Check(proposals.Image, limits),
        };
        if (Refuses(input) || proposals.View is not { } look)
        {
            return input;
        }

        var view = options.View ?? views.Recognised(look.Probabilities);
        input = input with
        {
            View = new ViewFinding(view, look.Probabilities, look.ErrorDegrees),
            Checks = [.. input.Checks, .. views.Check(look.Probabilities, options.View)],
            Models = [look.Model],
        };
        if (Refuses(input) || view == View.Unknown)
        {
            return input;
        }

        if (options.Landmarks is { } laid)
        {
            return input with { Landmarks = laid };
        }

        return proposals.Landmarks is { } proposed && proposed.View == view ? WithLandmarks(input, proposed, calibration) : input;
    }

    /// <summary>Whether the checks of an input refuse the film.</summary>
    internal static bool Refuses(ReadingInput input) => input.Checks.Any(c =>
        !c.Passed && c.Reason is { } reason && ReasonTable.Default.ScopeOf(reason) == ReasonScope.Film);

    private ReadingInput WithLandmarks(ReadingInput input, LandmarkProposals proposed, ModelCalibration calibration)
    {
        var judged = new LandmarkJudgement(proposed, calibration, limits, input.Image);
        return input with
        {
            Models = [.. input.Models, proposed.Model],
            View = input.View with { ErrorDegrees = proposed.ErrorDegrees ?? input.View.ErrorDegrees },
            Landmarks = judged.Landmarks,
            Spread = judged.Spread(),
            Unusable = judged.Unusable,
            Checks = [.. input.Checks, .. judged.Checks()],
            Calibration = calibration.FactorsFor(input.Patient.AgeMonths),
            ZoneCorrections = calibration.Zones.ToDictionary(
                z => z.Measurement, z => new ZoneCorrection(z.Temperature, z.Mix, z.Prior), StringComparer.Ordinal),
        };
    }
}
