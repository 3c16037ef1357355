using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Pipeline.Tests;

public sealed class FilmReaderTests
{
    private static readonly ReadOptions Adult = new() { Patient = new Patient(480, Sex.Female) };

    [Fact]
    public void Landmarks_LieWhereTheCropSaysTheyDo()
    {
        using var fixture = new ReaderFixture();
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult);
        Assert.False(reading.Adequacy.Refused);
        Assert.Equal(View.Lateral, reading.View.Name);

        // The fixed network places the fossa roof at (158, 138) of the crop.
        var expected = ReaderFixture.FilmToCrop(500, 600).Inverse.Apply(new Point(158, 138));
        var roof = reading.Landmarks.Single(l => l.Name == LandmarkNames.HumerusFossaRoof);
        Assert.InRange(roof.Position!.Value.DistanceTo(expected), 0, 2);
        Assert.Equal(LandmarkSource.Model, roof.Source);
        Assert.Equal(LandmarkSet.Lateral.Landmarks.Select(l => l.Name), reading.Landmarks.Select(l => l.Name));
    }

    [Fact]
    public void WholeElbow_IsMeasuredAndTimed()
    {
        using var fixture = new ReaderFixture();
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult);
        Assert.NotEqual(MeasurementState.Withheld, reading.Measurements.Single(m => m.Name == "anterior-humeral-line.position").State);
        Assert.Equal(["landmarks", "measurements", "normalise", "quality", "view"], reading.Timing.Keys.Order(StringComparer.Ordinal));
        Assert.Equal(["layout", "view"], reading.Models.Select(m => m.Name).Order(StringComparer.Ordinal));
        Assert.Contains(Caution.LastSentence, reading.CautionText, StringComparison.Ordinal);
    }

    [Fact]
    public void ManyPasses_FindTheSamePlaceThroughEveryTurn()
    {
        var (bright, dark) = (new Point(243, 262), new Point(301, 310));
        using var fixture = new ReaderFixture(landmarks: f => ModelFolders.Spots(f), passes: PassPlan.Default with { View = PassPlan.Single.View });
        var reading = fixture.Reader.Read(TestFilms.Spots(bright, dark), Adult);
        var roof = reading.Landmarks.Single(l => l.Name == LandmarkNames.HumerusFossaRoof);
        // A cell of the heatmap covers 18 film pixels, and the window flattens the top of the spot.
        Assert.InRange(roof.Position!.Value.DistanceTo(bright), 0, 4);
        // The network says the second place is probably hidden.
        Assert.Null(reading.Landmarks.Single(l => l.Name == LandmarkNames.HumerusWaist).Position);
    }

    [Fact]
    public void PassesThatDisagree_GiveNoPlaceAndSayWhy()
    {
        // The network gives the same crop places in a mirrored crop: two places on the film.
        using var fixture = new ReaderFixture(passes: PassPlan.Single with { Landmarks = [new CropPass(0, 1), new CropPass(0, 1, true)] });
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult);
        Assert.Null(reading.Landmarks.Single(l => l.Name == LandmarkNames.UlnaOlecranon).Position);
        Assert.Contains(reading.Reasons, r => r.Code == "passes-disagree");
        AssertLeakFree(reading);
    }

    [Theory]
    [InlineData("other-joint", "not-an-elbow")]
    [InlineData("no-radiograph", "not-a-radiograph")]
    [InlineData("unsure", "view-not-recognised")]
    public void ViewModelThatSeesNoElbow_RefusesTheFilm(string answer, string reason)
    {
        using var fixture = new ReaderFixture(answer);
        AssertRefused(fixture.Reader.Read(TestFilms.Limb(), Adult), reason);
    }

    [Fact]
    public void UnusablePictures_AreRefused()
    {
        using var fixture = new ReaderFixture();
        var random = new Random(5);
        AssertRefused(fixture.Reader.Read(TestFilms.Of(1, 1, (_, _) => 0.5), Adult), "image-unreadable");
        AssertRefused(fixture.Reader.Read(TestFilms.Of(400, 400, (_, _) => 0.5), Adult), "image-unreadable");
        AssertRefused(fixture.Reader.Read(TestFilms.Of(400, 400, (_, _) => random.NextDouble()), Adult), "image-unreadable");
        AssertRefused(fixture.Reader.Read(TestFilms.Of(400, 400, (x, y) => (x + y) / 800, coloured: 0.9), Adult), "not-a-radiograph");
        AssertRefused(fixture.Reader.Read(TestFilms.Limb(60, 70), Adult), "image-unreadable");
    }

    [Fact]
    public void ObliqueFilm_IsNotRefusedAndCarriesNoLine()
    {
        using var fixture = new ReaderFixture("oblique");
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult);
        Assert.False(reading.Adequacy.Refused);
        Assert.Empty(reading.Lines);
        Assert.Contains(reading.Reasons, r => r.Code == "oblique-view");
    }

    [Fact]
    public void StatedView_IsTakenWhereRecognitionIsUnsure()
    {
        using var fixture = new ReaderFixture("unsure");
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult with { View = View.Lateral });
        Assert.False(reading.Adequacy.Refused);
        Assert.Equal(View.Lateral, reading.View.Name);
        Assert.NotEmpty(reading.Landmarks);
    }

    [Fact]
    public void StatedViewAgainstRecognition_IsReported()
    {
        using var fixture = new ReaderFixture();
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult with { View = View.Ap });
        Assert.Equal(View.Ap, reading.View.Name);
        Assert.False(reading.Adequacy.Checks.Single(c => c.Name == "view.stated").Passed);
        Assert.Contains(reading.Reasons, r => r.Code == "view-stated-otherwise");
    }

    [Fact]
    public void RotatedFilm_PointsAtTheFractureBeforeTheView()
    {
        using var fixture = new ReaderFixture(landmarks: f => ModelFolders.LateralLayout(f, rotated: true));
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult);
        Assert.Equal(33, reading.View.ErrorDegrees!.Value, 1e-3);
        Assert.Contains("look for a fracture before blaming the view", reading.Reasons.Single(r => r.Code == "film-rotated").Text, StringComparison.Ordinal);
        AssertLeakFree(reading);
    }

    [Fact]
    public void LandmarksLaidBefore_AreTakenAsTheyAre()
    {
        using var fixture = new ReaderFixture();
        var laid = fixture.Reader.Read(TestFilms.Limb(), Adult).Landmarks
            .Select(l => l with { Source = LandmarkSource.Reader, Position = l.Position + new Vector(3, -2), Covariance = null }).ToList();
        var reading = fixture.Reader.Read(TestFilms.Limb(), Adult with { View = View.Lateral, Landmarks = laid });
        Assert.Equal(laid.Select(l => l.Position), reading.Landmarks.Select(l => l.Position));
        Assert.DoesNotContain(reading.Models, m => m.Name == "layout");
    }

    [Fact]
    public void SameFilm_GivesTheSameReadingOnAnyThread()
    {
        using var fixture = new ReaderFixture(passes: PassPlan.Default with { View = PassPlan.Single.View });
        var expected = Text(fixture.Reader.Read(TestFilms.Limb(), Adult));
        var readings = new string[6];
        Parallel.For(0, readings.Length, i => readings[i] = Text(fixture.Reader.Read(TestFilms.Limb(), Adult)));
        Assert.All(readings, r => Assert.Equal(expected, r));
    }

    [Fact]
    public void Cancelled_Stops()
    {
        using var fixture = new ReaderFixture();
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() => fixture.Reader.Read(TestFilms.Limb(), Adult, cancelled.Token));
    }

    [Fact]
    public void File_IsDecodedAndItsDecodingTimed()
    {
        using var fixture = new ReaderFixture();
        using var folder = new TemporaryFolder();
        var film = TestFilms.Limb();
        var path = folder.Write("limb.png", PlainPng.Grey16(film.Width, film.Height, (x, y) => film.Pixels[(y * film.Width) + x]));
        var reading = fixture.Reader.Read(path, Adult);
        Assert.Equal(("limb.png", 500, 600, "none"), (reading.Image.File, reading.Image.Width, reading.Image.Height, reading.Image.SpacingSource));
        Assert.True(reading.Timing["decode"] > 0);
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..500]);
        Assert.Throws<UnreadableFilmException>(() => fixture.Reader.Read(path, Adult));
    }

    private static void AssertRefused(FilmReading reading, string reason)
    {
        Assert.True(reading.Adequacy.Refused);
        Assert.Contains(reading.Reasons, r => r.Code == reason);
        Assert.Contains(reading.Adequacy.Checks, c => !c.Passed);
        Assert.Empty(reading.Landmarks);
        Assert.Empty(reading.Lines);
        Assert.Empty(reading.Circles);
        Assert.Empty(reading.Measurements);
    }

    private static void AssertLeakFree(FilmReading reading)
    {
        var withheld = reading.Measurements.Where(m => m.State == MeasurementState.Withheld).ToList();
        Assert.NotEmpty(withheld);
        Assert.All(withheld, m => Assert.True(m.Value is null && m.Redraw95 is null && m.Zones is null && m.Reasons.Count > 0, m.Name));
        Assert.DoesNotContain(reading.Lines, l => withheld.Exists(m => m.Name == l.Name));
    }

    private static string Text(FilmReading reading) =>
        JsonSerializer.Serialize(reading with { Timing = new Dictionary<string, double>(StringComparer.Ordinal) });
}
