using System.Diagnostics;
using ElbowAssist.Anatomy;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Pipeline.Stages;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Pipeline;

/// <summary>
/// Reads films: decoding, quality, view, landmarks, and the assembly of the reading. Thread-safe; the models are shared
/// and stay the caller's to dispose. The same film and options give the same reading but for its timing.
/// </summary>
public sealed class FilmReader
{
    private readonly ModelSet models;
    private readonly ToolIdentity tool;
    private readonly AdequacyLimits limits;
    private readonly PassPlan passes;
    private readonly ReadingAssembler assembler;

    /// <summary>Creates a reader.</summary>
    /// <param name="models">The models.</param>
    /// <param name="tool">The program, named in every reading.</param>
    /// <param name="passes">Passes; the default plan if null.</param>
    /// <param name="assembler">Assembler; the default one if null.</param>
    public FilmReader(ModelSet models, ToolIdentity tool, PassPlan? passes = null, ReadingAssembler? assembler = null)
    {
        ArgumentNullException.ThrowIfNull(models);
        ArgumentNullException.ThrowIfNull(tool);
        this.models = models;
        this.tool = tool;
        this.passes = passes ?? PassPlan.Default;
        this.assembler = assembler ?? ReadingAssembler.Default;
        limits = AdequacyLimits.Default;
    }

    /// <summary>Decodes and reads a PNG, JPEG or TIFF file.</summary>
    /// <exception cref="UnreadableFilmException">The file is no readable picture or exceeds a limit.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public FilmReading Read(string path, ReadOptions options, CancellationToken cancellation = default)
    {
        var started = Stopwatch.GetTimestamp();
        var film = FilmFile.Read(path);
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
        assembler.Assemble(Prepare(radiograph, options, decoding, cancellation));

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
        ArgumentNullException.ThrowIfNull(radiograph);
        ArgumentNullException.ThrowIfNull(options);
        var clock = new StageClock();
        if (decoding is { } decoded)
        {
            clock.Book("decode", decoded);
        }

        var film = clock.Time("normalise", () => NormalisedFilm.Of(radiograph));
        var input = new ReadingInput
        {
            Tool = tool,
            Image = Facts(radiograph),
            View = new ViewFinding(options.View ?? View.Unknown, new Dictionary<string, double>(StringComparer.Ordinal), null),
            Side = options.Side,
            Patient = options.Patient,
            Context = options.Context,
            Statements = options.Statements,
            Marks = options.Marks,
            Checks = clock.Time("quality", () => QualityStage.Check(film, limits)),
        };
        input = Refuses(input) ? input : Propose(film, input, options, clock, cancellation);
        return input with { Timing = clock.Milliseconds };
    }

    private ReadingInput Propose(
        NormalisedFilm film, ReadingInput input, ReadOptions options, StageClock clock, CancellationToken cancellation)
    {
        var view = clock.Time("view", () => new ViewStage(models.View, limits, passes.View).Run(film, options.View, cancellation));
        input = input with
        {
            View = view.Finding,
            Checks = [.. input.Checks, .. view.Checks],
            Models = [Identity(models.View.Folder)],
        };
        if (Refuses(input) || view.Finding.Name == View.Unknown)
        {
            return input;
        }

        if (options.Landmarks is { } laid)
        {
            return input with { Landmarks = laid };
        }

        if (models.LandmarksOf(view.Finding.Name) is not { } model)
        {
            return input;
        }

        var stage = new LandmarkStage(model, limits, passes.Landmarks);
        var proposed = clock.Time("landmarks", () => stage.Run(view.Film, view.Locator, cancellation));
        input = input with { Models = [.. input.Models, Identity(model.Folder)] };
        return proposed is null
            ? input
            : input with
            {
                View = input.View with { ErrorDegrees = proposed.ViewErrorDegrees ?? input.View.ErrorDegrees },
                Landmarks = proposed.Landmarks,
                Spread = proposed.Spread,
                Unusable = proposed.Unusable,
                Checks = [.. input.Checks, .. proposed.Checks],
                Calibration = ModelCalibration.Factors(model.Folder.Manifest),
            };
    }

    private static bool Refuses(ReadingInput input) => input.Checks.Any(c =>
        !c.Passed && c.Reason is { } reason && ReasonTable.Default.ScopeOf(reason) == ReasonScope.Film);

    private static ModelIdentity Identity(ModelFolder folder) =>
        new(folder.Manifest.Name, folder.Manifest.Version, folder.Manifest.Onnx.Sha256);

    private static ImageFacts Facts(Radiograph film) => new(
        film.Facts.FileName,
        film.Width,
        film.Height,
        film.Facts.RowSpacingMm,
        film.Facts.ColumnSpacingMm,
        film.Facts.SpacingSource,
        film.Facts.Sha256);
}
