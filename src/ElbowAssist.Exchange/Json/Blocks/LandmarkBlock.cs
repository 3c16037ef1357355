using System.Text.Json;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Json.Blocks;

/// <summary>The landmarks of a reading, and those of a truth file, which carry a tangent in place of spread and source.</summary>
internal static class LandmarkBlock
{
    public static void Write(Utf8JsonWriter json, IReadOnlyList<Landmark> landmarks) =>
        json.WriteObjects("landmarks", landmarks, static (j, landmark) =>
        {
            WritePlace(j, landmark.Name, landmark.Kind, landmark.Position);
            if (landmark.Covariance is { } c)
            {
                j.WriteSymmetric("covariance", c.XX, c.XY, c.YY);
            }
            else
            {
                j.WriteNull("covariance");
            }

            j.WriteNumber("visibility", landmark.Visibility);
            j.WriteString("source", Vocabularies.Source.WordOf(landmark.Source));
        });

    /// <summary>Reads landmarks; one without a source was placed by a reader, one without a visibility can be seen if it has a place.</summary>
    public static IReadOnlyList<Landmark> Read(JsonCursor landmarks)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        return landmarks.Items(cursor =>
        {
            var name = cursor.Required("name").Text();
            if (!names.Add(name))
            {
                throw cursor.Fail($"repeats the landmark \"{name}\"");
            }

            var position = ReadPosition(cursor);
            return new Landmark(
                name,
                ReadKind(cursor, name),
                position,
                position is null ? null : cursor.Optional("covariance")?.SymmetricMatrix(),
                ReadVisibility(cursor, position),
                cursor.Optional("source")?.Word(Vocabularies.Source) ?? LandmarkSource.Reader);
        });
    }

    public static void WriteTrue(Utf8JsonWriter json, IReadOnlyList<TrueLandmark> landmarks) =>
        json.WriteObjects("landmarks", landmarks, static (j, landmark) =>
        {
            WritePlace(j, landmark.Name, landmark.Kind, landmark.Position);
            if (landmark.Tangent is { } tangent)
            {
                j.WriteVector("tangent", tangent);
            }
            else
            {
                j.WriteNull("tangent");
            }

            j.WriteNumber("visibility", landmark.Visibility);
        });

    public static IReadOnlyList<TrueLandmark> ReadTrue(JsonCursor landmarks) => landmarks.Items(cursor =>
    {
        var name = cursor.Required("name").Text();
        var position = ReadPosition(cursor);
        return new TrueLandmark(
            name,
            ReadKind(cursor, name),
            position,
            position is null ? null : cursor.Optional("tangent")?.Vector(),
            ReadVisibility(cursor, position));
    });

    private static void WritePlace(Utf8JsonWriter json, string name, LandmarkKind kind, Point? position)
    {
        json.WriteString("name", name);
        json.WriteString("kind", Vocabularies.Kind.WordOf(kind));
        json.WriteNumberOrNull("x", position?.X);
        json.WriteNumberOrNull("y", position?.Y);
    }

    private static Point? ReadPosition(JsonCursor cursor) => (cursor.Nullable("x"), cursor.Nullable("y")) switch
    {
        ({ } x, { } y) => new Point(x.Number(), y.Number()),
        (null, null) => null,
        _ => throw cursor.Fail("must have both x and y or neither"),
    };

    private static LandmarkKind ReadKind(JsonCursor cursor, string name) =>
        cursor.Optional("kind")?.Word(Vocabularies.Kind) ?? DefinedKind(name) ?? throw cursor.Fail($"must say the kind of \"{name}\"");

    private static LandmarkKind? DefinedKind(string name) =>
        new[] { LandmarkSet.Lateral, LandmarkSet.Ap }.SelectMany(s => s.Landmarks).FirstOrDefault(l => l.Name == name)?.Kind;

    private static double ReadVisibility(JsonCursor cursor, Point? position) => cursor.Optional("visibility") switch
    {
        null => position is null ? 0 : 1,
        { } visibility => visibility.Number() is >= 0 and <= 1 and var p ? p : throw visibility.Fail("must be from 0 to 1"),
    };
}
