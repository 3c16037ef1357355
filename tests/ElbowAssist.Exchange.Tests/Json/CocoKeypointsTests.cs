using System.Text;
using System.Text.Json;
using CsCheck;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Geometry;
using ElbowAssist.Testing;

namespace ElbowAssist.Exchange.Tests.Json;

public sealed class CocoKeypointsTests
{
    [Fact]
    public void CentreOfTheTopLeftPixel_IsZeroInCoco()
    {
        var landmarks = new[] { new Landmark("ulna.coronoid", LandmarkKind.Point, new Point(0.5, 0.5), null, 1, LandmarkSource.Reader) };
        using var document = JsonDocument.Parse(CocoKeypoints.Write([new CocoFilm("a.png", 10, 20, View.Lateral, landmarks)]));
        var keypoints = document.RootElement.GetProperty("annotations")[0].GetProperty("keypoints").EnumerateArray().Select(k => k.GetDouble()).ToArray();
        var at = 3 * LandmarkSet.Lateral.IndexOf("ulna.coronoid");
        Assert.Equal([0, 0, 2], keypoints[at..(at + 3)]);
        Assert.Equal(3 * LandmarkSet.Lateral.Landmarks.Count, keypoints.Length);
    }

    [Fact]
    public void Films_ComeBackWithTheirPlaces()
    {
        var films = new[]
        {
            new CocoFilm("l.png", SampleLandmarks.Width, SampleLandmarks.Height, View.Lateral, SampleLandmarks.Lateral(LandmarkSource.Reader)),
            new CocoFilm("a.png", SampleLandmarks.Width, SampleLandmarks.Height, View.Ap, SampleLandmarks.Ap(LandmarkSource.Reader)),
        };
        var back = CocoKeypoints.Read(CocoKeypoints.Write(films));
        Assert.Equal(films.Select(f => (f.File, f.View)), back.Select(f => (f.File, f.View)));
        Assert.Equal(
            films.SelectMany(f => f.Landmarks).Select(l => (l.Name, l.Kind, l.Position)),
            back.SelectMany(f => f.Landmarks).Select(l => (l.Name, l.Kind, l.Position)));
    }

    [Fact]
    public void AnyPlace_ComesBackWithinRounding() =>
        Gen.Select(Gen.Double[0, 5000], Gen.Double[0, 5000]).Sample((x, y) =>
        {
            var landmark = new Landmark("humerus.waist", LandmarkKind.Point, new Point(x, y), null, 1, LandmarkSource.Reader);
            var back = CocoKeypoints.Read(CocoKeypoints.Write([new CocoFilm("a", 1, 1, View.Lateral, [landmark])]))[0].Landmarks.Single(l => l.Name == "humerus.waist");
            Assert.Equal(0, back.Position!.Value.DistanceTo(landmark.Position!.Value), 9);
        }, iter: 200);

    [Fact]
    public void Flags_TellUnlabelledHiddenAndVisible()
    {
        const string text = """
            {"images": [{"id": 7, "file_name": "a.png", "width": 100, "height": 100}],
             "annotations": [{"id": 1, "image_id": 7, "category_id": 4, "keypoints": [0, 0, 0, 10, 11, 1, 20, 21.5, 2]}],
             "categories": [{"id": 4, "name": "any", "keypoints": ["humerus.waist", "ulna.coronoid", "ulna.olecranon"]}]}
            """;
        var landmarks = Assert.Single(CocoKeypoints.Read(Encoding.UTF8.GetBytes(text))).Landmarks;
        Assert.Equal([(null, 0), (new Point(10.5, 11.5), 0), (new Point(20.5, 22), 1)], landmarks.Select(l => (l.Position, l.Visibility)));
    }

    [Theory]
    [InlineData("\"keypoints\": [1, 2]", "three numbers")]
    [InlineData("\"keypoints\": [1, 2, \"2\"]", "must be a number")]
    public void WrongKeypoints_AreNamed(string keypoints, string expected)
    {
        var text = "{\"images\": [{\"id\": 1, \"file_name\": \"a\", \"width\": 1, \"height\": 1}], \"annotations\": [{\"id\": 1, \"image_id\": 1, \"category_id\": 1, " +
            keypoints + "}], \"categories\": [{\"id\": 1, \"name\": \"any\", \"keypoints\": [\"humerus.waist\"]}]}";
        var message = Assert.Throws<ExchangeFormatException>(() => CocoKeypoints.Read(Encoding.UTF8.GetBytes(text))).Message;
        Assert.Contains(expected, message, StringComparison.Ordinal);
    }
}
