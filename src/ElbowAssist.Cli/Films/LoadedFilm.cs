using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Files;

namespace ElbowAssist.Cli.Films;

/// <summary>A decoded film and what options and files say of it.</summary>
/// <param name="Radiograph">Pixels, with the spacing that was settled on.</param>
/// <param name="Facts">Facts after all sources were heard.</param>
internal sealed record LoadedFilm(Radiograph Radiograph, ResolvedFacts Facts)
{
    /// <summary>Decodes a film and hears its sidecar.</summary>
    /// <exception cref="UnreadableFilmException">The film cannot be decoded.</exception>
    /// <exception cref="ExchangeFormatException">The sidecar is wrong.</exception>
    public static LoadedFilm Load(string path, FilmFacts options)
    {
        var radiograph = FilmFile.Read(path);
        var facts = ResolvedFacts.From([options, .. Sidecar(path)]);
        return new LoadedFilm(
            radiograph.With(radiograph.Facts with
            {
                RowSpacingMm = facts.RowSpacingMm,
                ColumnSpacingMm = facts.ColumnSpacingMm,
                SpacingSource = facts.SpacingSource,
            }),
            facts);
    }

    private static IEnumerable<FilmFacts> Sidecar(string path)
    {
        var sidecar = path + SidecarJson.Suffix;
        if (!File.Exists(sidecar))
        {
            yield break;
        }

        FilmFacts facts;
        try
        {
            facts = SidecarJson.Read(File.ReadAllBytes(sidecar));
        }
        catch (Exception e) when (e is ExchangeFormatException or IOException or UnauthorizedAccessException)
        {
            throw new ExchangeFormatException($"The sidecar {Path.GetFileName(sidecar)} cannot be used: {e.Message}", e);
        }

        yield return facts;
    }
}
