using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;
using ElbowAssist.Pipeline;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Films;

/// <summary>Readings on the proposals of the installed models.</summary>
internal sealed class ModelReading : IReadingSource
{
    private readonly ModelSet models;
    private readonly FilmReader reader;

    private ModelReading(ModelSet models)
    {
        this.models = models;
        reader = new FilmReader(models, ThisTool.Identity);
    }

    /// <summary>Loads and checks the models before any film is read.</summary>
    /// <param name="preferred">Model to take for its view, or null.</param>
    /// <param name="films">Number of films; many are read side by side, each on one thread.</param>
    /// <exception cref="UserErrorException">A model folder does not fit.</exception>
    public static ModelReading Open(string? preferred, int films)
    {
        try
        {
            return new ModelReading(ModelSet.Load(ModelsFolder.Path, preferred, films == 1 ? ModelThreads.Interactive : ModelThreads.Batch));
        }
        catch (ModelFolderException e)
        {
            throw new UserErrorException(e.Message);
        }
    }

    public FilmReading Read(LoadedFilm film, CancellationToken cancellation) => reader.Read(
        film.Radiograph,
        new ReadOptions
        {
            View = film.Facts.View,
            Side = film.Facts.Side,
            Patient = film.Facts.Patient,
            Context = film.Facts.Context,
            Statements = film.Statements,
        },
        film.Decoding,
        cancellation);

    public void Dispose() => models.Dispose();
}
