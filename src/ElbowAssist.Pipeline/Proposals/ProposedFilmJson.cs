using System.Collections.ObjectModel;
using System.Text.Json;
using System.Text.Json.Serialization;
using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Merging;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Pipeline.Proposals;

/// <summary>
/// <see cref="ProposedFilm"/> as <c>elbowassist/proposals/1</c>: numbers exact to the last bit, so that a reading judged
/// from the file is the reading of the film.
/// </summary>
public static partial class ProposedFilmJson
{
    /// <summary>The proposals as UTF-8 text.</summary>
    public static byte[] Write(ProposedFilm film)
    {
        ArgumentNullException.ThrowIfNull(film);
        var (proposals, landmarks) = (film.Proposals, film.Proposals.Landmarks);
        return JsonSerializer.SerializeToUtf8Bytes(
            new FilmBlock(
                ProposedFilm.SchemaId,
                film.Image,
                film.StatedView,
                film.Side,
                film.Patient.AgeMonths,
                film.Patient.Sex,
                film.Context,
                film.Statements,
                proposals.Image,
                proposals.View,
                landmarks is null
                    ? null
                    : new LandmarksBlock(
                        landmarks.Model, landmarks.View, landmarks.FilmToCrop.A, landmarks.FilmToCrop.B, landmarks.FilmToCrop.Shift.X,
                        landmarks.FilmToCrop.Shift.Y, landmarks.FilmToCrop.Mirrored, landmarks.ErrorDegrees,
                        [.. landmarks.Landmarks.Select(LandmarkLine.Of)], landmarks.Features, landmarks.Exposure)),
            BlockJson.Default.FilmBlock);
    }

    /// <summary>Reads proposals.</summary>
    /// <exception cref="FormatException">The text holds no proposals of this version; the message is one sentence.</exception>
    public static ProposedFilm Read(ReadOnlySpan<byte> utf8)
    {
        try
        {
            var block = JsonSerializer.Deserialize(utf8, BlockJson.Default.FilmBlock);
            if (block is null || block.Schema != ProposedFilm.SchemaId || block.Landmarks?.Merged.Any(m => m is null) == true)
            {
                throw new FormatException($"The file holds no {ProposedFilm.SchemaId}.");
            }

            return new ProposedFilm(
                block.Image,
                block.StatedView,
                block.Side,
                new Patient(block.AgeMonths, block.Sex),
                block.Context,
                block.Statements ?? new ReaderStatements(),
                new FilmProposals { Image = block.ImageFigures, View = block.View, Landmarks = block.Landmarks?.Landmarks() });
        }
        catch (JsonException e)
        {
            throw new FormatException($"The file holds no {ProposedFilm.SchemaId}: it is wrong at {e.Path ?? "its beginning"}.", e);
        }
    }

    private sealed record FilmBlock(
        string Schema,
        ImageFacts Image,
        View? StatedView,
        Side Side,
        int? AgeMonths,
        Sex? Sex,
        FilmContext Context,
        ReaderStatements? Statements,
        IReadOnlyDictionary<string, double> ImageFigures,
        ViewProposal? View,
        LandmarksBlock? Landmarks);

    private sealed record LandmarksBlock(
        ModelIdentity Model,
        View View,
        double A,
        double B,
        double ShiftX,
        double ShiftY,
        bool Mirrored,
        double? ErrorDegrees,
        IReadOnlyList<LandmarkLine> Merged,
        IReadOnlyList<double> Features,
        IReadOnlyDictionary<string, double>? Exposure = null)
    {
        public LandmarkProposals Landmarks() => new(
            Model, View, new Similarity(A, B, new Vector(ShiftX, ShiftY), Mirrored), ErrorDegrees, [.. Merged.Select(m => m.Proposal())], null, Features)
        {
            Exposure = Exposure ?? ReadOnlyDictionary<string, double>.Empty,
        };
    }

    /// <summary>One landmark; no coordinates where no pass gave a place.</summary>
    private sealed record LandmarkLine(
        string Name, double? X, double? Y, double? XX, double? XY, double? YY, double Visibility, double Share, TwoPlacesLine? Apart)
    {
        public static LandmarkLine Of(MergedProposal m) => new(
            m.Name,
            m.Position.IsFinite ? m.Position.X : null,
            m.Position.IsFinite ? m.Position.Y : null,
            m.Spread?.XX,
            m.Spread?.XY,
            m.Spread?.YY,
            m.Visibility,
            m.Share,
            m.Disagreement is { } d ? new TwoPlacesLine(d.First.X, d.First.Y, d.Second.X, d.Second.Y, d.SecondWeight) : null);

        public MergedProposal Proposal() => new(
            Name,
            new Point(X ?? double.NaN, Y ?? double.NaN),
            XX is { } xx && XY is { } xy && YY is { } yy ? new Covariance(xx, xy, yy) : null,
            Visibility,
            Share,
            Covariance.Zero,
            Apart is { } a ? new TwoPlaces(new Point(a.X, a.Y), new Point(a.OtherX, a.OtherY), a.OtherWeight) : null,
            []);
    }

    private sealed record TwoPlacesLine(double X, double Y, double OtherX, double OtherY, double OtherWeight);

    [JsonSourceGenerationOptions(
        PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true, RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true)]
    [JsonSerializable(typeof(FilmBlock))]
    private sealed partial class BlockJson : JsonSerializerContext;
}
