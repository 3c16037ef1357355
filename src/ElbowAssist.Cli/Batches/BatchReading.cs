using ElbowAssist.Batch.Films;
using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging.Files;

namespace ElbowAssist.Cli.Batches;

/// <summary>Reads the films of a batch as <c>read</c> does, each on one thread.</summary>
/// <param name="models">The models; they stay the caller's to dispose.</param>
internal sealed class BatchReading(ModelReading models) : IFilmReading
{
    public Recipe Recipe { get; } = RecipeOf(models.Sha256);

    public static Recipe RecipeOf(string models) => new(models, PipelineVersion.Text);

    public FilmResult? Read(FilmBytes film, ReadOnlyMemory<byte> options)
    {
        try
        {
            var loaded = LoadedFilm.Decode(film.Content, film.FileName, Stated(film, options));
            return FilmResult.Of(ReadRun.ReadingOf(loaded, models, CancellationToken.None).Reading);
        }
        catch (Exception e) when (e is UnreadableFilmException or ExchangeFormatException)
        {
            return FilmResult.Unreadable(e.Message);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // Told without the film's name or content; another try on another machine may mend it.
            Console.Error.WriteLine(Program.Unexpected(e));
            return null;
        }
    }

    private static IReadOnlyList<FilmFacts> Stated(FilmBytes film, ReadOnlyMemory<byte> options)
    {
        var given = SidecarJson.Read(options) with { Source = "option" };
        if (film.Sidecar is not { } sidecar)
        {
            return [given];
        }

        try
        {
            return [given, SidecarJson.Read(sidecar)];
        }
        catch (ExchangeFormatException e)
        {
            throw new ExchangeFormatException($"The sidecar {film.FileName}{SidecarJson.Suffix} cannot be used: {e.Message}", e);
        }
    }
}
