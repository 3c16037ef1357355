using System.Text.Json;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Json.Blocks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Json.Coco;

/// <summary>
/// COCO keypoints in and out. COCO counts from the centre of the top-left pixel, the project from its top-left corner:
/// 0.5 is taken off on the way out and added on the way in. The flag v is 0 not labelled, 1 labelled but hidden, 2 visible.
/// </summary>
public static class CocoKeypoints
{
    private const double PixelCentre = 0.5;
    private const double VisibleFrom = 0.5;

    /// <summary>Films and their landmarks as a COCO keypoints file.</summary>
    /// <exception cref="ArgumentException">A film is neither lateral nor AP.</exception>
    public static byte[] Write(IReadOnlyList<CocoFilm> films)
    {
        ArgumentNullException.ThrowIfNull(films);
        return JsonText.Write(json =>
        {
            json.WriteStartObject();
            json.WriteStartObject("info");
            json.WriteString("description", "Elbow radiograph landmarks; keypoints count from the centre of the top-left pixel.");
            json.WriteString("version", "1");
            json.WriteEndObject();
            json.WriteObjects("images", films.Index(), static (j, film) =>
            {
                j.WriteNumber("id", film.Index + 1);
                j.WriteString("file_name", film.Item.File);
                j.WriteNumber("width", film.Item.Width);
                j.WriteNumber("height", film.Item.Height);
            });
            json.WriteObjects("annotations", films.Index(), static (j, film) => WriteAnnotation(j, film.Index + 1, film.Item));
            json.WriteObjects("categories", CocoCategory.All, WriteCategory);
            json.WriteEndObject();
        });
    }

    /// <summary>Reads every annotated film. Keypoint names are the project's; other categories are left out.</summary>
    /// <exception cref="ExchangeFormatException">The text is no COCO keypoints file; the message is one sentence.</exception>
    public static IReadOnlyList<CocoFilm> Read(ReadOnlyMemory<byte> utf8) => JsonText.Read(utf8, Read);

    /// <summary>The file names of all images, annotated or not, in the order of the file.</summary>
    /// <exception cref="ExchangeFormatException">The text is no COCO file; the message is one sentence.</exception>
    public static IReadOnlyList<string> FilesOf(ReadOnlyMemory<byte> utf8) =>
        JsonText.Read(utf8, root => root.Required("images").Items(i => i.Required("file_name").Text()));

    internal static IReadOnlyList<CocoFilm> Read(JsonCursor root)
    {
        var images = ById(root.Required("images"), i => i);
        var categories = ById(root.Required("categories"), c => c.Optional("keypoints")?.Items(k => k.Text()) ?? []);
        var films = new List<CocoFilm>();
        foreach (var annotation in root.Required("annotations").Items())
        {
            var imageId = annotation.Required("image_id");
            if (!images.TryGetValue(imageId.Integer(), out var image))
            {
                throw imageId.Fail("names no image of the file");
            }

            var categoryId = annotation.Required("category_id");
            if (!categories.TryGetValue(categoryId.Integer(), out var names))
            {
                throw categoryId.Fail("names no category of the file");
            }

            if (SetOf(names) is { } set)
            {
                films.Add(new CocoFilm(
                    image.Required("file_name").Text(),
                    FilmBlocks.Positive(image.Required("width")),
                    FilmBlocks.Positive(image.Required("height")),
                    set.View,
                    ReadKeypoints(annotation.Required("keypoints"), names, set)));
            }
        }

        return films;
    }

    internal static Dictionary<int, T> ById<T>(JsonCursor list, Func<JsonCursor, T> read)
    {
        var found = new Dictionary<int, T>();
        foreach (var item in list.Items())
        {
            var id = item.Required("id");
            if (!found.TryAdd(id.Integer(), read(item)))
            {
                throw id.Fail("stands twice in the file");
            }
        }

        return found;
    }

    /// <summary>The landmark set that holds all names, or null. Names common to both views do not decide.</summary>
    internal static LandmarkSet? SetOf(IReadOnlyList<string> names) =>
        names.Count == 0
            ? null
            : new[] { LandmarkSet.Lateral, LandmarkSet.Ap }.FirstOrDefault(s => names.All(n => s.IndexOf(n) >= 0));

    internal static List<Landmark> ReadKeypoints(JsonCursor keypoints, IReadOnlyList<string> names, LandmarkSet set)
    {
        var numbers = keypoints.Items(k => k.Number());
        if (names.Distinct(StringComparer.Ordinal).Count() != names.Count)
        {
            throw keypoints.Fail("belong to a category that repeats a keypoint name");
        }

        if (numbers.Count != 3 * names.Count)
        {
            throw keypoints.Fail("must hold three numbers for each keypoint of the category");
        }

        return [.. names.Select((name, i) =>
        {
            var flag = numbers[(3 * i) + 2];
            Point? position = flag > 0 ? new Point(numbers[3 * i] + PixelCentre, numbers[(3 * i) + 1] + PixelCentre) : null;
            return new Landmark(name, set.Landmarks[set.IndexOf(name)].Kind, position, null, flag >= 2 ? 1 : 0, LandmarkSource.Reader);
        })];
    }

    private static void WriteAnnotation(Utf8JsonWriter json, int id, CocoFilm film)
    {
        var category = CocoCategory.Of(film.View);
        var byName = film.Landmarks.ToDictionary(l => l.Name, StringComparer.Ordinal);
        var keypoints = category.Set.Landmarks
            .SelectMany(d => Keypoint(byName.GetValueOrDefault(d.Name)))
            .ToArray();
        var labelled = film.Landmarks.Where(l => l.Position is not null).Select(l => l.Position!.Value).ToList();
        json.WriteNumber("id", id);
        json.WriteNumber("image_id", id);
        json.WriteNumber("category_id", category.Id);
        json.WriteNumber("iscrowd", 0);
        json.WriteNumber("num_keypoints", labelled.Count);
        json.WriteNumbers("keypoints", keypoints);
        var box = Box(labelled);
        json.WriteNumbers("bbox", box);
        json.WriteNumber("area", box[2] * box[3]);
    }

    private static double[] Keypoint(Landmark? landmark) => landmark?.Position is { } p
        ? [p.X - PixelCentre, p.Y - PixelCentre, landmark.Visibility >= VisibleFrom ? 2 : 1]
        : [0, 0, 0];

    private static double[] Box(List<Point> points) => points.Count == 0
        ? [0, 0, 0, 0]
        :
        [
            points.Min(p => p.X) - PixelCentre,
            points.Min(p => p.Y) - PixelCentre,
            points.Max(p => p.X) - points.Min(p => p.X),
            points.Max(p => p.Y) - points.Min(p => p.Y),
        ];

    private static void WriteCategory(Utf8JsonWriter json, CocoCategory category)
    {
        json.WriteNumber("id", category.Id);
        json.WriteString("name", category.Name);
        json.WriteString("supercategory", "radiograph");
        json.WriteWords("keypoints", category.Set.Landmarks.Select(l => l.Name));
        json.WriteStartArray("skeleton");
        foreach (var (from, to) in category.Skeleton())
        {
            json.WriteRawValue(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"[{from}, {to}]"));
        }

        json.WriteEndArray();
    }
}
