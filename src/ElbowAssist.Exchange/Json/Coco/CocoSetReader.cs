using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Json.Blocks;

namespace ElbowAssist.Exchange.Json.Coco;

/// <summary>
/// Reads COCO keypoints as labelled sets, and placements of other programs on the films of a set: either another such file
/// or the list that COCO calls results (<c>image_id</c>, <c>category_id</c>, <c>keypoints</c>, <c>score</c>).
/// </summary>
public static class CocoSetReader
{
    /// <summary>Reads a labelled set.</summary>
    /// <exception cref="ExchangeFormatException">The text is no COCO keypoints file; the message is one sentence.</exception>
    public static CocoSet Read(ReadOnlyMemory<byte> utf8) => JsonText.Read(utf8, Read);

    /// <summary>Reads placements on the films of a set.</summary>
    /// <param name="utf8">COCO keypoints, whose films are found by file name, or COCO results, whose films are found by number.</param>
    /// <param name="films">The set; null if the file must name its films itself.</param>
    /// <exception cref="ExchangeFormatException">The text is neither, or names a film the set does not hold.</exception>
    public static IReadOnlyList<CocoAnnotation> ReadPlacements(ReadOnlyMemory<byte> utf8, CocoSet? films) => JsonText.Read(utf8, root =>
        root.Kind != JsonValueKind.Array
            ? Read(root).Annotations
            : films is null
                ? throw new ExchangeFormatException("A list of COCO results names its films by number, so it needs a data set that is a COCO file itself.")
                : Annotations(root.Items(), films.Images.ToDictionary(i => i.Id), films.Keypoints));

    private static CocoSet Read(JsonCursor root)
    {
        var images = CocoKeypoints.ById(root.Required("images"), ReadImage);
        var keypoints = CocoKeypoints.ById(root.Required("categories"), c => c.Optional("keypoints")?.Items(k => k.Text()) ?? []);
        return new CocoSet([.. images.Values.OrderBy(i => i.Id)], Annotations(root.Required("annotations").Items(), images, keypoints)) { Keypoints = keypoints };
    }

    private static List<CocoAnnotation> Annotations(
        IReadOnlyList<JsonCursor> items, Dictionary<int, CocoImage> images, IReadOnlyDictionary<int, IReadOnlyList<string>> keypoints)
    {
        var found = new List<CocoAnnotation>();
        foreach (var item in items)
        {
            var (imageId, categoryId) = (item.Required("image_id"), item.Required("category_id"));
            if (!images.TryGetValue(imageId.Integer(), out var image))
            {
                throw imageId.Fail("names no image of the set");
            }

            if (!keypoints.TryGetValue(categoryId.Integer(), out var names))
            {
                throw categoryId.Fail("names no category of the set");
            }

            if (CocoKeypoints.SetOf(names) is { } set)
            {
                found.Add(new CocoAnnotation(
                    image,
                    set.View,
                    item.Optional("annotator")?.Text() ?? "",
                    item.Optional("withProposals")?.Flag() ?? false,
                    WithCovariances(item.Optional("covariances"), CocoKeypoints.ReadKeypoints(item.Required("keypoints"), names, set))));
            }
        }

        return found;
    }

    private static CocoImage ReadImage(JsonCursor image)
    {
        var row = FilmBlocks.Spacing(image.Optional("rowSpacingMm"));
        var column = FilmBlocks.Spacing(image.Optional("columnSpacingMm"));
        if (row is null != column is null)
        {
            throw image.Fail("must give both rowSpacingMm and columnSpacingMm or neither");
        }

        return new CocoImage(
            image.Required("id").Integer(), image.Required("file_name").Text(), FilmBlocks.Positive(image.Required("width")), FilmBlocks.Positive(image.Required("height")))
        {
            RowSpacingMm = row,
            ColumnSpacingMm = column,
            Patient = image.Optional("patient")?.Text(),
            Site = image.Optional("site")?.Text(),
            AgeMonths = FilmBlocks.AgeMonths(image.Optional("ageMonths")),
            Sex = image.Optional("sex")?.Word(Vocabularies.Sex),
            Side = image.Optional("side")?.Word(Vocabularies.Side) ?? Side.Unknown,
            Injuries = image.Optional("injuries")?.Items(i => i.Text()),
        };
    }

    /// <summary>Extra member <c>covariances</c>: xx, xy, yy in squared pixels for each keypoint.</summary>
    private static List<Landmark> WithCovariances(JsonCursor? covariances, List<Landmark> landmarks)
    {
        if (covariances is not { } given)
        {
            return landmarks;
        }

        var numbers = given.Items(n => n.Number());
        if (numbers.Count != 3 * landmarks.Count)
        {
            throw given.Fail("must hold three numbers for each keypoint");
        }

        return [.. landmarks.Select((l, i) =>
        {
            var covariance = new Geometry.Covariance(numbers[3 * i], numbers[(3 * i) + 1], numbers[(3 * i) + 2]);
            return l.Position is null ? l : covariance.IsValid ? l with { Covariance = covariance } : throw given.Fail("holds something that is no covariance");
        })];
    }
}
