using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;
using ElbowAssist.Pipeline;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Cli.Films;

/// <summary>Readings on the proposals of the installed models.</summary>
internal sealed class ModelReading : IReadingSource
{
    private readonly ModelSet models;
    private readonly FilmReader reader;
    private readonly AdequacyLimits limits;

    private ModelReading(ModelSet models)
    {
        this.models = models;
        limits = LimitsFile.Read();
        reader = new FilmReader(models, ThisTool.Identity, limits: limits);
    }

    /// <summary>Loads and checks the models before any film is read.</summary>
    /// <param name="preferred">Model to take for its view, or null.</param>
    /// <param name="films">Number of films; many are read side by side, each on one thread.</param>
    /// <exception cref="UserErrorException">A model folder does not fit.</exception>
    public static ModelReading Open(string? preferred, int films)
    {
        ModelSet? loaded = null;
        try
        {
            loaded = ModelSet.Load(ModelsFolder.Path, preferred, films == 1 ? ModelThreads.Interactive : ModelThreads.Batch);
            return new ModelReading(loaded);
        }
        catch (ModelFolderException e)
        {
            loaded?.Dispose();
            throw new UserErrorException(e.Message);
        }
    }

    /// <summary>SHA-256 over models, calibration and limits.</summary>
    public string Sha256 => Mark(models.Sha256, limits);

    /// <summary>What <see cref="Sha256"/> would be, without loading networks.</summary>
    /// <param name="preferred">Model to take for its view, or null.</param>
    /// <exception cref="UserErrorException">A model folder does not fit.</exception>
    public static string Sha256Of(string? preferred)
    {
        try
        {
            return Mark(ModelSet.Sha256Of(ModelsFolder.Path, preferred), LimitsFile.Read());
        }
        catch (ModelFolderException e)
        {
            throw new UserErrorException(e.Message);
        }
    }

    public FilmReading Read(LoadedFilm film, CancellationToken cancellation) =>
        reader.Read(film.Radiograph, OptionsOf(film), film.Decoding, cancellation);

    /// <summary>What image and networks say of a film, before limits and calibration.</summary>
    public ProposedFilm Propose(LoadedFilm film, CancellationToken cancellation) =>
        reader.Propose(film.Radiograph, OptionsOf(film), cancellation);

    private static ReadOptions OptionsOf(LoadedFilm film) => new()
    {
        View = film.Facts.View,
        Side = film.Facts.Side,
        Patient = film.Facts.Patient,
        Context = film.Facts.Context,
        Statements = film.Statements,
    };

    private static string Mark(string models, AdequacyLimits limits) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{models} {limits.ToJson()}")));

    public void Dispose() => models.Dispose();
}
