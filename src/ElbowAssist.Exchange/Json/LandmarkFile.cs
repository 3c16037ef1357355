using System.Globalization;
using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Json.Blocks;
using ElbowAssist.Exchange.Json.Coco;

namespace ElbowAssist.Exchange.Json;

/// <summary>Landmarks of one film from a file of placements.</summary>
/// <param name="View">Lateral or AP, as stated or as the names tell.</param>
/// <param name="Landmarks">Landmarks in the order of the view's set; one that the file leaves out has no position.</param>
public sealed record PlacedLandmarks(View View, IReadOnlyList<Landmark> Landmarks);

/// <summary>Reads the landmarks block of a reading or truth, alone or within its file, or COCO keypoints.</summary>
public static class LandmarkFile
{
    /// <summary>Reads the landmarks laid on a film.</summary>
    /// <param name="utf8">The file.</param>
    /// <param name="film">File name of the film, to find it among the films of a COCO file.</param>
    /// <param name="width">Columns of the film.</param>
    /// <param name="height">Rows of the film.</param>
    /// <exception cref="ExchangeFormatException">The text holds no landmarks for this film; the message is one sentence.</exception>
    public static PlacedLandmarks Read(ReadOnlyMemory<byte> utf8, string film, int width, int height) =>
        JsonText.Read(utf8, root => Read(root, film, width, height));

    /// <summary>Whether the file can hold landmarks of many films, as COCO keypoints do.</summary>
    /// <exception cref="ExchangeFormatException">The text is not valid JSON.</exception>
    public static bool IsForManyFilms(ReadOnlyMemory<byte> utf8) => JsonText.Read(utf8, IsCoco);

    private static bool IsCoco(JsonCursor root) => root.Has("annotations") && root.Has("categories");

    private static PlacedLandmarks Read(JsonCursor root, string film, int width, int height)
    {
        if (IsCoco(root))
        {
            return ReadCoco(root, film, width, height);
        }

        var block = root.Kind == JsonValueKind.Array ? root : root.Required("landmarks");
        if (root.Has("image"))
        {
            var image = root.Required("image");
            ExpectSize(image.Required("width").Integer(), image.Required("height").Integer(), width, height);
        }

        var stated = root.Has("view") ? root.Required("view").Required("name").Word(Vocabularies.View) : View.Unknown;
        return Arrange(LandmarkBlock.Read(block), stated);
    }

    private static PlacedLandmarks ReadCoco(JsonCursor root, string film, int width, int height)
    {
        var films = CocoKeypoints.Read(root);
        var named = films.Where(f => Path.GetFileName(f.File) == film).ToList();
        var found = (named.Count, films.Count) switch
        {
            (1, _) => named[0],
            (0, 1) => films[0],
            (0, _) => throw new ExchangeFormatException($"The COCO file holds no elbow landmarks for {film}."),
            _ => throw new ExchangeFormatException($"The COCO file holds more than one set of elbow landmarks for {film}."),
        };
        ExpectSize(found.Width, found.Height, width, height);
        return Arrange(found.Landmarks, found.View);
    }

    private static PlacedLandmarks Arrange(IReadOnlyList<Landmark> landmarks, View stated)
    {
        var set = LandmarkSet.Of(stated) ?? Guess(landmarks);
        var byName = landmarks.ToDictionary(l => l.Name, StringComparer.Ordinal);
        if (landmarks.FirstOrDefault(l => set.IndexOf(l.Name) < 0) is { } stranger)
        {
            throw new ExchangeFormatException(
                $"\"{stranger.Name}\" is no landmark of the {Vocabularies.View.WordOf(set.View)} view.");
        }

        return landmarks.Any(l => l.Position is not null)
            ? new PlacedLandmarks(set.View,
                [.. set.Landmarks.Select(d => byName.TryGetValue(d.Name, out var l)
                    ? l with { Kind = d.Kind }
                    : new Landmark(d.Name, d.Kind, null, null, 0, LandmarkSource.Reader))])
            : throw new ExchangeFormatException("No landmark of the file has a position.");
    }

    private static LandmarkSet Guess(IReadOnlyList<Landmark> landmarks)
    {
        var lateral = landmarks.All(l => LandmarkSet.Lateral.IndexOf(l.Name) >= 0);
        var ap = landmarks.All(l => LandmarkSet.Ap.IndexOf(l.Name) >= 0);
        return (lateral, ap) switch
        {
            (true, false) => LandmarkSet.Lateral,
            (false, true) => LandmarkSet.Ap,
            (false, false) => throw new ExchangeFormatException("The landmark names belong to no single view."),
            _ => throw new ExchangeFormatException("The landmark names do not tell the view; state it with the landmarks."),
        };
    }

    private static void ExpectSize(int laidWidth, int laidHeight, int width, int height)
    {
        if (laidWidth != width || laidHeight != height)
        {
            throw new ExchangeFormatException(string.Create(CultureInfo.InvariantCulture,
                $"The landmarks were laid on a film of {laidWidth} by {laidHeight} pixels, this one has {width} by {height}."));
        }
    }
}
