using System.Diagnostics;
using ElbowAssist.Anatomy;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Calibration;
using ElbowAssist.Pipeline.Judging;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Pipeline.Stages;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Pipeline;

/// <summary>
/// Reads films: decoding, quality, view, landmarks, and the assembly of the reading. Thread-safe; the models are shared
/// and stay the caller's to dispose. The same film and options give the same reading but for its timing.
/// </summary>
public sealed class FilmReader
{
    private readonly ModelSet models;
    private readonly PassPlan passes;
    private readonly FilmJudge judge;
    private readonly Dictionary<View, ModelCalibration> calibrations;

    /// <summary>Creates a reader.</summary>
    /// <param name="models">The models.</param>
    /// <param name="tool">The program, named in every reading.</param>
    /// <param name="passes">Passes; the default plan if null.</param>
    /// <param name="limits">Limits; those of the project if null.</param>
    /// <exception cref="ModelFolderException">The calibration in a manifest is not of the form it should have.</exception>
    public FilmReader(ModelSet models, ToolIdentity tool, PassPlan? passes = null, AdequacyLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(models);
        ArgumentNullException.ThrowIfNull(tool);
        this.models = models;
        this.passes = passes ?? PassPlan.Default;
        judge = new FilmJudge(tool, limits ?? AdequacyLimits.Default);
        calibrations = models.Views.ToDictionary(v => v, v => CalibrationOf(models.LandmarksOf(v)!.Folder));
    }

    /// <summary>Decodes and reads a PNG, JPEG or TIFF file.</summary>
    /// <exception cref="UnreadableFilmException">The file is no readable picture or exceeds a limit.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public FilmReading Read(string path, ReadOptions options, CancellationToken cancellation = default)
    {
        var started = Stopwatch.GetTimestamp();
        using var film = FilmFile.Read(path, reuse: true);
        return Read(film, options, Stopwatch.GetElapsedTime(started), cancellation);
    }

    /// <summary>Reads a decoded radiograph.</summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public FilmReading Read(Radiograph radiograph, ReadOptions options, CancellationToken cancellation = default) =>
        Read(radiograph, options, decoding: null, cancellation);

    /// <summary>Reads a decoded radiograph.</summary>
    /// <param name="radiograph">The film; its facts give spacing and source.</param>
    /// <param name="options">What is known beyond its pixels.</param>
    /// <param name="decoding">Time spent on decoding, to be named in the reading, or null.</param>
    /// <param name="cancellation">Looked at between passes.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public FilmReading Read(
        Radiograph radiograph, ReadOptions options, TimeSpan? decoding, CancellationToken cancellation = default) =>
        judge.Assemble(Prepare(radiograph, options, decoding, cancellation));

    /// <summary>
    /// Everything a reading is assembled from, so that a caller can assemble it again where a reader has moved a landmark or
    /// stated a fact, without running the models a second time.
    /// </summary>
    /// <param name="radiograph">The film; its facts give spacing and source.</param>
    /// <param name="options">What is known beyond its pixels.</param>
    /// <param name="decoding">Time spent on decoding, to be named in the reading, or null.</param>
    /// <param name="cancellation">Looked at between passes.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public ReadingInput Prepare(
        Radiograph radiograph, ReadOptions options, TimeSpan? decoding = null, CancellationToken cancellation = default)
    {
        var clock = new StageClock();
        if (decoding is { } decoded)
        {
            clock.Book("decode", decoded);
        }

        var image = Facts(radiograph);
        using var looks = new FilmLooks(radiograph);
        var proposals = Look(looks, options, clock, p => FilmJudge.Refuses(judge.Input(image, options, p, ModelCalibration.None)), cancellation);
        var calibration = proposals.Landmarks is { } landmarks ? calibrations[landmarks.View] : ModelCalibration.None;
        return judge.Input(image, options, proposals, calibration) with { Timing = clock.Milliseconds };
    }

    /// <summary>What image and networks say of a film, before any limit or calibration: everything is looked at.</summary>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public ProposedFilm Propose(Radiograph radiograph, ReadOptions options, CancellationToken cancellation = default)
    {
        using var looks = new FilmLooks(radiograph);
        var proposals = Look(looks, options, new StageClock(), _ => false, cancellation);
        return new ProposedFilm(Facts(radiograph), options.View, options.Side, options.Patient, options.Context, options.Statements, proposals);
    }

    /// <summary>The reading of a film and what it was made of; everything is looked at, also where the film is refused.</summary>
    /// <param name="looks">The film, perhaps looked at by other readers before; its facts give spacing and source.</param>
    /// <param name="options">What is known beyond its pixels.</param>
    /// <param name="decoding">Time spent on decoding, to be named in the reading, or null.</param>
    /// <param name="cancellation">Looked at between passes.</param>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public (ProposedFilm Proposed, FilmReading Reading) ReadWithProposals(
        FilmLooks looks, ReadOptions options, TimeSpan? decoding = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(looks);
        var clock = new StageClock();
        if (decoding is { } decoded)
        {
            clock.Book("decode", decoded);
        }

        var image = Facts(looks.Radiograph);
        var proposals = Look(looks, options, clock, _ => false, cancellation);
        var calibration = proposals.Landmarks is { } landmarks ? calibrations[landmarks.View] : ModelCalibration.None;
        return (
            new ProposedFilm(image, options.View, options.Side, options.Patient, options.Context, options.Statements, proposals),
            judge.Assemble(judge.Input(image, options, proposals, calibration) with { Timing = clock.Milliseconds }));
    }

    private FilmProposals Look(
        FilmLooks looks, ReadOptions options, StageClock clock, Func<FilmProposals, bool> isEnough, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(options);
        var found = new FilmProposals { Image = looks.Figures(clock) };
        if (isEnough(found))
        {
            return found;
        }

        var look = looks.View(models.View, passes.View, models.Threads, clock, cancellation);
        found = found with { View = look.Proposal };
        var view = options.View ?? ViewJudgement.Likeliest(look.Proposal.Probabilities);
        if (isEnough(found) || options.Landmarks is not null || models.LandmarksOf(view) is not { } model)
        {
            return found;
        }

        var stage = new LandmarkStage(model, passes.Landmarks, models.Threads, withJoint: calibrations[view].Spread is null);
        return found with { Landmarks = clock.Time("landmarks", () => stage.Run(look.Film, look.Locator, cancellation)) };
    }

    private static ModelCalibration CalibrationOf(ModelFolder folder)
    {
        try
        {
            return ModelCalibration.Of(folder.Manifest);
        }
        catch (FormatException e)
        {
            throw new ModelFolderException(folder.Path, "has a calibration that cannot be read; calibrate the model anew.", e);
        }
    }

    private static ImageFacts Facts(Radiograph film) => new(
        film.Facts.FileName,
        film.Width,
        film.Height,
        film.Facts.RowSpacingMm,
        film.Facts.ColumnSpacingMm,
        film.Facts.SpacingSource,
        film.Facts.Sha256);
}
