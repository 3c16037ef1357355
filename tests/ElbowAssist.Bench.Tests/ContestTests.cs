using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Exchange;
using ElbowAssist.Exchange.Json.Coco;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Testing;

namespace ElbowAssist.Bench.Tests;

/// <summary>The tables of a bench over elbows that are moved by known distances, worked by hand.</summary>
public sealed class ContestTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    [Fact] // Six films with a spacing of 1 mm, laid 1, 2 … 6 pixels off.
    public void RadialErrorsAndSuccessRates_AreThoseOfTheKnownDistances()
    {
        var dataset = Set([.. Enumerable.Range(1, 6).Select(i => new CocoText.Film(Named("{0:00}.png", i), Named("p{0}", (i + 1) / 2), 1, ("a", false, default)))]);
        var tables = Tables(dataset, Laid("m", dataset, i => new Vector(0, i)));
        var radial = Row(tables, "landmark-errors", ("group", "all"), ("error", "radial"));
        Assert.Equal(3.5, (double)radial["mean"], 9);
        Assert.Equal(3.5, (double)radial["median"], 9);
        Assert.Equal(6.0, (double)radial["largest"], 9);
        Assert.Equal(6 * CocoText.Landmarks, radial["n"]);
        // Patients err 1.5, 3.5 and 5.5 mm in the mean: no draw of patients lies outside.
        Assert.InRange((double)radial["meanLow"], 1.5 - 1e-9, 3.5);
        Assert.InRange((double)radial["meanHigh"], 3.5, 5.5 + 1e-9);
        var success = Row(tables, "success-rates", ("group", "all"));
        Assert.Equal([2.0 / 6, 2.0 / 6, 3.0 / 6, 4.0 / 6], [(double)success["within2mm"], (double)success["within2.5mm"], (double)success["within3mm"], (double)success["within4mm"]], (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(5.0 / 6, (double)Row(tables, "success-curve", ("distanceMm", "5.5"))["share"], 9);
    }

    [Fact]
    public void AcrossAndAlong_MakeUpTheRadialError()
    {
        var dataset = Set(new CocoText.Film("1.png", null, 0.5, ("a", false, default)));
        var contest = new Contest(dataset, [Laid("m", dataset, _ => new Vector(3, -4))]);
        Assert.All(contest.Scored["m"][0].Landmarks.Where(l => l.Normal is not null), l =>
            Assert.Equal(2.5, Math.Sqrt((l.Normal!.Value * l.Normal.Value) + (l.Slip!.Value * l.Slip.Value)), 9));
    }

    [Fact] // The straight posterior shaft of an invented elbow: moved along itself, all is slip.
    public void MovedAlongAStraightCortex_NothingIsAcross()
    {
        var elbow = new InventedElbow().Lateral();
        var set = Anatomy.Landmarks.LandmarkSet.Lateral;
        var (first, last) = (elbow[set.IndexOf("humerus.posterior.1")]!.Value, elbow[set.IndexOf("humerus.posterior.5")]!.Value);
        var dataset = Set(new CocoText.Film("1.png", null, null, ("a", false, default)));
        var scored = new Contest(dataset, [Laid("m", dataset, _ => (last - first).Unit * 2)]).Scored["m"][0];
        Assert.All(scored.Landmarks.Where(l => l.Name.StartsWith("humerus.posterior", StringComparison.Ordinal)), l => Assert.Equal((0.0, 2.0), (Math.Round(l.Normal!.Value, 6), Math.Round(l.Slip!.Value, 6))));
    }

    [Fact]
    public void WithoutASpacing_LengthsArePixels_AndNothingIsSaidOfMillimetres()
    {
        var dataset = Set(new CocoText.Film("1.png", null, null, ("a", false, default)), new CocoText.Film("2.png", null, null, ("a", false, default)));
        var tables = Tables(dataset, Laid("m", dataset, _ => new Vector(3, 0)));
        Assert.Equal("px", Row(tables, "landmark-errors", ("group", "all"), ("error", "radial"))["unit"]);
        Assert.DoesNotContain(tables, t => t.Name is "success-rates" or "success-curve");
    }

    [Fact]
    public void AFilmLeftOut_CountsAsNotLaid()
    {
        var dataset = Set(new CocoText.Film("1.png", null, 1, ("a", false, default)), new CocoText.Film("2.png", null, 1, ("a", false, default)));
        var all = Laid("m", dataset, _ => default);
        var tables = Tables(dataset, all with { Answers = all.Answers.Take(1).ToDictionary(a => a.Key, a => a.Value) });
        Assert.Equal(0.5, (double)Row(tables, "success-rates", ("group", "all"))["within2mm"], 9);
        Assert.Equal(1, Row(tables, "entrants")["answered"]);
        Assert.Equal(CocoText.Landmarks, Row(tables, "landmark-errors", ("group", "all"), ("error", "radial"))["missing"]);
    }

    [Fact]
    public void Groups_AreReportedApart()
    {
        var dataset = Set(
            new CocoText.Film("1.png", null, 1, ("a", false, default)) { Site = "north", Injuries = ["radial-neck"] },
            new CocoText.Film("2.png", null, 1, ("a", false, default)) { Site = "south" });
        var tables = Tables(dataset, Laid("m", dataset, i => new Vector(i, 0)));
        double Mean(string group) => (double)Row(tables, "landmark-errors", ("group", group), ("error", "radial"))["mean"];
        Assert.Equal([1, 2, 1, 1, 2, 1.5], [Mean("site north"), Mean("site south"), Mean("injured"), Mean("radial-neck"), Mean("uninjured"), Mean("adult")], (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact] // Three readers at 0, 2 and 4 pixels of 0.5 mm: their mean is at 2, the mean of the others of the first at 3.
    public void SeveralReaders_AreHeldAgainstEachOtherAndTheirMean()
    {
        var dataset = Set([.. Enumerable.Range(1, 4).Select(i => new CocoText.Film(Named("{0}.png", i), null, 0.5, ("a", false, default), ("b", false, new Vector(2, 0)), ("c", false, new Vector(4, 0))))]);
        var tables = Tables(dataset, Laid("m", dataset, _ => new Vector(1, 0), from: "a"));
        double Distance(string first, string second) => (double)Row(tables, "landmark-agreement", ("first", first), ("second", second))["mean"];
        Assert.Equal(
            [0.5, 0.5, 0.5, 1.5, 1, 2, 1, 1.5, 0],
            [Distance("m", "reference"), Distance("m", "a"), Distance("m", "b"), Distance("m", "c"), Distance("a", "b"), Distance("a", "c"), Distance("b", "c"),
                Distance("a", "mean of the other readers"), Distance("b", "mean of the other readers")],
            (a, b) => Math.Abs(a - b) < 1e-9);
        // The same elbow everywhere: moving it changes no measurement.
        var agreement = Row(tables, "measurement-agreement", ("first", "a"), ("second", "b"), ("measurement", "shaft-condylar-angle"));
        Assert.Equal(0, (double)agreement["bias"], 6);
    }

    [Fact] // Readers a and b are 2 px apart alone and 1 px apart with proposals: every patient differs by −1 px of 0.5 mm.
    public void AgreementWithProposals_IsHeldAgainstAgreementWithout()
    {
        var dataset = Set([.. Enumerable.Range(1, 5).Select(i => new CocoText.Film(
            Named("{0}.png", i), null, 0.5, ("a", false, default), ("b", false, new Vector(2, 0)), ("a", true, new Vector(1, 0)), ("b", true, new Vector(2, 0))))]);
        var row = Row(Tables(dataset), "readers-with-and-without");
        Assert.Equal([1, 0.5, -0.5], [(double)row["without"], (double)row["with"], (double)row["difference"]], (a, b) => Math.Abs(a - b) < 1e-9);
        // All five signs alike: 2 of 2⁵ choices are as far out.
        Assert.Equal(2.0 / 32, (double)row["permutationP"], 9);
        Assert.Equal(new Vector(1, 0), dataset.Films[0].Truth.Landmarks.First(l => l.Position is not null).Position!.Value -
            new InventedElbow().Lateral().OfType<Point>().First(), (a, b) => (a - b).Length < 1e-9);
    }

    [Fact]
    public void Entrants_AreComparedByPatient_AndCorrected()
    {
        var dataset = Set([.. Enumerable.Range(1, 6).Select(i => new CocoText.Film(Named("{0}.png", i), null, 1, ("a", false, default)))]);
        var tables = Tables(dataset, Laid("near", dataset, i => new Vector(i, 0)), Laid("far", dataset, i => new Vector(2 * i, 0)));
        var row = Row(tables, "comparisons", ("what", "landmarks, radial"));
        Assert.Equal(-3.5, (double)row["difference"], 9);
        // Six differences of one sign: 2/2⁶ by either test.
        Assert.Equal([2.0 / 64, 2.0 / 64], [(double)row["wilcoxonP"], (double)row["permutationP"]], (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.True((double)row["permutationHolmP"] >= (double)row["permutationP"]);
    }

    [Fact] // Both lay the first film; the second is laid by the first entrant alone.
    public void WhatOnlyOneEntrantLaid_IsCountedAndNotCompared()
    {
        var dataset = Set(new CocoText.Film("1.png", null, 1, ("a", false, default)), new CocoText.Film("2.png", null, 1, ("a", false, default)));
        var half = Laid("half", dataset, _ => new Vector(3, 0));
        var tables = Tables(dataset, Laid("all", dataset, i => new Vector(i * i, 0)), half with { Answers = half.Answers.Take(1).ToDictionary(a => a.Key, a => a.Value) });
        var row = Row(tables, "comparisons", ("what", "landmarks, radial"));
        Assert.Equal([CocoText.Landmarks, CocoText.Landmarks, 0, 1], [row["compared"], row["firstAlone"], row["secondAlone"], row["patients"]]);
        Assert.Equal([1.0, 3.0], [(double)row["firstMean"], (double)row["secondMean"]], (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Fact] // One line drawn 4 pixels of 0.5 mm beside the one through the landmarks, one turned by 10 degrees beside the capitellum.
    public void LinesDrawnByHand_AreHeldAgainstThoseThroughLandmarks()
    {
        var plain = Set([.. Enumerable.Range(1, 2).Select(i => new CocoText.Film(Named("{0}.png", i), null, 0.5, ("a", false, default)))]);
        var entrant = Laid("m", plain, _ => default);
        var drawn = plain.Films.Select((film, i) =>
        {
            var reading = entrant.Answers[film.File].Reading;
            var line = reading.Lines.First(l => l.Name.StartsWith("anterior-humeral-line.", StringComparison.Ordinal));
            var beside = new Line(line.Point, line.Direction).Project(reading.Circles.First(c => c.Name == "capitellum").Centre);
            var (sine, cosine) = Math.SinCos(10 * Math.PI / 180);
            var turned = new Vector((line.Direction.X * cosine) - (line.Direction.Y * sine), (line.Direction.X * sine) + (line.Direction.Y * cosine));
            return i == 0
                ? new NamedLine("anterior-humeral-line", line.Point + (line.Direction.Perpendicular * 4), -line.Direction)
                : new NamedLine("anterior-humeral-line", beside, turned);
        }).ToList();
        var dataset = plain with { Films = [.. plain.Films.Select((f, i) => f with { Placements = [.. f.Placements, new Placement("r", false, []) { Lines = [drawn[i]] }] })] };
        var tables = Tables(dataset, entrant);
        foreach (var first in new[] { "m", "a" })
        {
            var row = Row(tables, "line-agreement", ("first", first), ("second", "r"));
            Assert.Equal(("anterior-humeral-line", "mm", (object)2), ((string)row["line"], (string)row["unit"], row["films"]));
            Assert.Equal([5.0, 10.0], [(double)row["angleMean"], (double)row["angleHigh"]], (a, b) => Math.Abs(a - b) < 1e-6);
            Assert.Equal(1.0, (double)row["offsetMean"], 0.02);
        }
    }

    [Fact]
    public void ASpacingThatCocoDoesNotGive_IsAskedOfTheFilm()
    {
        var path = folder.Write("coco.json", CocoText.Of(new("1.dcm", null, null, ("a", false, default)), new("2.dcm", null, 0.5, ("a", false, default)), new("3.png", null, null, ("a", false, default))));
        var dataset = FilmDataset.Open(path, film => film.EndsWith(".dcm", StringComparison.Ordinal) ? (0.2, 0.3) : null);
        Assert.Equal([(0.2, 0.3), (0.5, 0.5), (null, null)], dataset.Films.Select(f => (f.Truth.Image.RowSpacingMm, f.Truth.Image.ColumnSpacingMm)));
    }

    [Fact]
    public void Results_FindTheirFilmsByNumber()
    {
        var dataset = Set(new CocoText.Film("sub/1.png", null, 1, ("a", false, default)), new CocoText.Film("sub/2.png", null, 1, ("a", false, default)));
        var laid = CocoSetReader.ReadPlacements(CocoText.Results((2, new Vector(5, 0))), dataset.Coco);
        Assert.Equal("sub/2.png", Assert.Single(laid).Image.File);
        Assert.Throws<ExchangeFormatException>(() => CocoSetReader.ReadPlacements(CocoText.Results((3, default)), dataset.Coco));
        Assert.Throws<ExchangeFormatException>(() => CocoSetReader.ReadPlacements(CocoText.Results((1, default)), null));
    }

    [Fact]
    public void AFilmOutsideTheFolderOfTheSet_IsNotOpened() =>
        Assert.Throws<ExchangeFormatException>(() => Set(new CocoText.Film("../1.png", null, 1, ("a", false, default))));

    [Fact]
    public void TwoPlacementsOfOneReader_AreTwoTooMany() =>
        Assert.Throws<ExchangeFormatException>(() => Set(new CocoText.Film("1.png", null, 1, ("a", false, default), ("a", false, default))));

    public void Dispose() => folder.Dispose();

    private FilmDataset Set(params CocoText.Film[] films) => FilmDataset.Open(folder.Write("coco.json", CocoText.Of(films)));

    private static IReadOnlyList<Table> Tables(FilmDataset dataset, params Entrant[] entrants) => BenchTables.Of(dataset, entrants);

    /// <summary>An entrant that lays what a reader laid, moved by so many pixels on the n-th film, from 1.</summary>
    private static Entrant Laid(string name, FilmDataset dataset, Func<int, Vector> moved, string from = "a") => new(name, [View.Lateral], dataset.Films.Select((film, i) =>
    {
        Anatomy.Landmarks.Landmark[] landmarks = [.. film.Placements.First(p => p.Reader == from).Landmarks
            .Select(l => new Anatomy.Landmarks.Landmark(l.Name, l.Kind, l.Position!.Value + moved(i + 1), Covariance.Isotropic(1), 1, Anatomy.Landmarks.LandmarkSource.Model))];
        var reading = ReadingAssembler.Default.Assemble(new ReadingInput
        {
            Tool = new ToolIdentity("test", "0"),
            Image = film.Truth.Image,
            View = new ViewFinding(View.Lateral, new Dictionary<string, double>(), null),
            Patient = film.Truth.Patient,
            Landmarks = landmarks,
        });
        return (film.File, Answer: new FilmAnswer(reading, landmarks));
    }).ToDictionary(a => a.File, a => a.Answer));

    private static string Named(string format, int number) => string.Format(System.Globalization.CultureInfo.InvariantCulture, format, number);

    private static Dictionary<string, object> Row(IReadOnlyList<Table> tables, string name, params (string Column, string Value)[] where)
    {
        var table = tables.Single(t => t.Name == name);
        var row = table.Rows.First(r => where.All(w => Table.Shown(r[table.Columns.ToList().IndexOf(w.Column)]) == w.Value));
        return table.Columns.Zip(row).ToDictionary(c => c.First, c => c.Second);
    }
}
