using System.Security.Cryptography;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Cli.Films;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;
using ElbowAssist.Pipeline;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Web.Films;

namespace ElbowAssist.Cli.Serving;

/// <summary>Films, limits and models for the service. The models are loaded with the first film that needs them, or by <see cref="Warm"/>.</summary>
internal sealed class FilmDesk(string? preferred, AdequacyLimits? limits = null) : IFilmDesk, IDisposable
{
    private readonly Lazy<(ModelSet Models, FilmReader Reader)> loaded = new(() =>
    {
        // Several films are read side by side, each on one thread: that serves a study of two views best.
        var models = ModelSet.Load(ModelsFolder.Path, preferred, ModelThreads.Batch);
        return (models, new FilmReader(models, ThisTool.Identity, limits: limits));
    });

    public ToolIdentity Tool => ThisTool.Identity;

    public AdequacyLimits Limits { get; } = limits ?? AdequacyLimits.Default;

    /// <summary>Decodes a film as it is shown, and loads the models: the first reader does not wait for either.</summary>
    /// <param name="film">A film to try it with, or null.</param>
    /// <exception cref="UserErrorException">A model folder does not fit.</exception>
    public void Warm(string? film)
    {
        try
        {
            if (film is not null)
            {
                _ = DisplaySamples.Of(NormalisedFilm.Of(Open(File.ReadAllBytes(film), Path.GetFileName(film), []).Radiograph), 2048);
            }

            _ = loaded.Value;
        }
        catch (ModelFolderException e)
        {
            throw new UserErrorException(e.Message);
        }
    }

    public OpenedFilm Open(ReadOnlyMemory<byte> file, string name, IReadOnlyList<FilmFacts> stated)
    {
        var film = LoadedFilm.Decode(file, name, stated);
        return new OpenedFilm(film.Radiograph, film.Facts, film.Dicom?.Source);
    }

    public ReadingInput Propose(OpenedFilm film, ReadOnlyMemory<byte>? placements, CancellationToken cancellation)
    {
        var (radiograph, facts) = (film.Radiograph, film.Facts);
        if (placements is { } laid)
        {
            var placed = LandmarkFile.Read(laid, radiograph.Facts.FileName, radiograph.Width, radiograph.Height);
            return new ReadingInput
            {
                Tool = Tool,
                Image = new ImageFacts(
                    radiograph.Facts.FileName, radiograph.Width, radiograph.Height, facts.RowSpacingMm, facts.ColumnSpacingMm, facts.SpacingSource, radiograph.Facts.Sha256),
                View = new ViewFinding(placed.View, new Dictionary<string, double>(StringComparer.Ordinal), null),
                Side = facts.Side,
                Patient = facts.Patient,
                Context = facts.Context,
                // They stand in for a model's proposals, and are named as what they are.
                Models = [new ModelIdentity("landmarks laid beforehand", "1", Convert.ToHexStringLower(SHA256.HashData(laid.Span)))],
                Landmarks = [.. placed.Landmarks.Select(l => l with { Source = LandmarkSource.Model })],
            };
        }

        return loaded.Value.Reader.Prepare(
            radiograph,
            new ReadOptions { View = facts.View, Side = facts.Side, Patient = facts.Patient, Context = facts.Context },
            cancellation: cancellation);
    }

    public void Dispose()
    {
        if (loaded.IsValueCreated)
        {
            loaded.Value.Models.Dispose();
        }
    }
}
