using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Geometry;
using ElbowAssist.Testing;

namespace ElbowAssist.Exchange.Tests.Json;

public sealed class LandmarkFileTests
{
    [Fact]
    public void ReadingFile_GivesItsLandmarks()
    {
        var placed = Read(ReadingJson.Write(SampleReadings.Lateral()));
        Assert.Equal(View.Lateral, placed.View);
        Assert.Equal(SampleLandmarks.Lateral(), placed.Landmarks);
    }

    [Fact]
    public void BareBlock_TellsTheViewByItsNames_AndIsTheReaders()
    {
        var placed = Read(Encoding.UTF8.GetBytes("""[{"name": "humerus.waist", "x": 3, "y": 4}]"""));
        Assert.Equal(View.Lateral, placed.View);
        Assert.Equal(LandmarkSet.Lateral.Landmarks.Select(l => l.Name), placed.Landmarks.Select(l => l.Name));
        Assert.Equal(
            new Landmark("humerus.waist", LandmarkKind.Point, new Point(3, 4), null, 1, LandmarkSource.Reader),
            placed.Landmarks.Single(l => l.Position is not null));
    }

    [Fact]
    public void CocoFile_IsSearchedForTheFilm()
    {
        var films = new[]
        {
            new CocoFilm("other.png", SampleLandmarks.Width, SampleLandmarks.Height, View.Ap, SampleLandmarks.Ap()),
            new CocoFilm("folder/film.png", SampleLandmarks.Width, SampleLandmarks.Height, View.Lateral, SampleLandmarks.Lateral()),
        };
        Assert.Equal(View.Lateral, Read(CocoKeypoints.Write(films)).View);
        Assert.Contains("no elbow landmarks for film.png",
            Assert.Throws<ExchangeFormatException>(() => Read(CocoKeypoints.Write([films[0], films[0]]))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""[{"name": "humerus.weist", "x": 3, "y": 4}]""", "must say the kind of \"humerus.weist\"")]
    [InlineData("""[{"name": "humerus.waist", "x": 3, "y": 4}, {"name": "trochlea.edge.medial", "x": 3, "y": 4}]""", "no single view")]
    [InlineData("""[{"name": "humerus.fossa.roof", "x": 3, "y": 4}]""", "do not tell the view")]
    [InlineData("""[{"name": "humerus.waist", "x": null, "y": null}]""", "No landmark of the file has a position")]
    [InlineData("""[{"name": "humerus.waist", "x": 1, "y": 1}, {"name": "humerus.waist", "x": 1, "y": 1}]""", "repeats")]
    [InlineData("""{"points": []}""", "lacks \"landmarks\"")]
    public void WrongFiles_AreExplained(string text, string expected) =>
        Assert.Contains(expected, Assert.Throws<ExchangeFormatException>(() => Read(Encoding.UTF8.GetBytes(text))).Message, StringComparison.Ordinal);

    [Fact]
    public void LandmarksOfAnotherFilmSize_AreNotTaken()
    {
        var message = Assert.Throws<ExchangeFormatException>(() =>
            LandmarkFile.Read(ReadingJson.Write(SampleReadings.Lateral()), "film.png", 512, 512)).Message;
        Assert.Equal("The landmarks were laid on a film of 800 by 1000 pixels, this one has 512 by 512.", message);
    }

    private static PlacedLandmarks Read(byte[] utf8) =>
        LandmarkFile.Read(utf8, "film.png", SampleLandmarks.Width, SampleLandmarks.Height);
}
