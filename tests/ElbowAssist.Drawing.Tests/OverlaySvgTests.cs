using System.Globalization;
using System.Text;
using System.Xml.Linq;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Drawing.Tests;

public sealed class OverlaySvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void ViewBox_IsTheFilm()
    {
        var root = Draw(SampleReadings.Lateral());
        Assert.Equal("0 0 800 1000", root.Attribute("viewBox")!.Value);
    }

    [Fact]
    public void Overlay_WithoutAFilm_HoldsNoPictureAndAnOpenGround()
    {
        var text = Encoding.UTF8.GetString(OverlaySvg.Write(SampleReadings.Lateral()));
        Assert.DoesNotContain("<image", text, StringComparison.Ordinal);
        Assert.DoesNotContain("background", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Film_IsEmbeddedSmall()
    {
        var pixels = new byte[4000 * 3000];
        new Random(1).NextBytes(pixels);
        var bytes = OverlaySvg.Write(SampleReadings.Lateral(), new OverlayOptions { Film = new GreyPicture(4000, 3000, pixels) });
        Assert.Contains("data:image/jpeg;base64,", Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        Assert.InRange(bytes.Length, 100_000, 2_000_000);
    }

    [Theory]
    [InlineData(LandmarkSource.Reader, "#F0E442", "none")]
    [InlineData(LandmarkSource.Model, "#56B4E9", "12 7")]
    public void Lines_TellWhoLaidThem_ByColourAndDash(LandmarkSource source, string colour, string dashes)
    {
        var strokes = Group(Draw(SampleReadings.Lateral(source)), "line", "anterior-humeral-line.position").Elements(Svg + "path")
            .Where(p => p.Attribute("stroke")?.Value == colour).ToList();
        Assert.NotEmpty(strokes);
        Assert.All(strokes, s => Assert.Equal(dashes, s.Attribute("stroke-dasharray")!.Value));
    }

    [Fact]
    public void EitherSide_HasItsOwnPatternAndWords()
    {
        var reading = SampleReadings.Lateral();
        reading = reading with { Lines = [.. reading.Lines.Where(l => l.Name != "anterior-humeral-line.position")] };
        var root = Draw(reading);
        var group = Group(root, "line", "anterior-humeral-line.shaft.position");
        Assert.Equal("either-side", group.Attribute("data-state")!.Value);
        Assert.Contains(group.Elements(), e => e.Attribute("stroke-dasharray")?.Value == "12 5 3 5");
        Assert.Contains("(either side)", Group(root, "label", "anterior-humeral-line.shaft.position").Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_LeaveTheRadialHeadOpen()
    {
        // Rim corners (310, 606) and (310, 680): diameter 74, so nothing may lie within 0.3 diameters of the head's middle.
        var head = new Point(305, 643);
        var points = Draw(SampleReadings.Lateral()).Descendants(Svg + "g").Where(g => g.Attribute("class")?.Value == "line")
            .SelectMany(g => g.Elements(Svg + "path")).Where(p => p.Attribute("stroke") is not null).SelectMany(Segments).ToList();
        Assert.NotEmpty(points);
        Assert.All(points, s => Assert.True(Distance(head, s.From, s.To) > 22, $"{s} crosses the radial head."));
    }

    [Fact]
    public void AnteriorHumeralLine_LeavesTheCortexOpen()
    {
        var segments = Group(Draw(SampleReadings.Lateral()), "line", "anterior-humeral-line.position")
            .Elements(Svg + "path").Where(p => p.Attribute("stroke") is not null).SelectMany(Segments).ToList();
        foreach (var cortex in SampleLandmarks.Lateral().Where(l => l.Name.StartsWith("humerus.anterior", StringComparison.Ordinal)))
        {
            Assert.All(segments, s => Assert.True(Distance(cortex.Position!.Value, s.From, s.To) > 5, $"{s} lies on {cortex.Name}."));
        }
    }

    [Fact]
    public void Ruler_PutsTheLineWhereItsPositionSays()
    {
        // The circle's diameter is 124, the line crosses at 0.53, posterior is to the right: the ruler starts 0.53 · 124 to the left.
        var ruler = Group(Draw(SampleReadings.Lateral()), "thirds", "anterior-humeral-line.position").Elements(Svg + "path").ToList();
        var (from, to) = Segments(ruler[1])[0];
        var mark = Segments(ruler[^1])[0].From;
        Assert.Equal(124, from.DistanceTo(to), 1);
        Assert.Equal(0.53, (mark.X - from.X) / (to.X - from.X), 1);
        Assert.True(from.Y > 780, "The ruler lies below the ulna.");
    }

    [Theory]
    [InlineData(0, 62)]
    [InlineData(30, 62)]
    [InlineData(-60, 20)]
    [InlineData(90, 12)]
    [InlineData(180, 40)]
    public void RulerCaptions_NeverOverlap(double turn, double radius)
    {
        var (sine, cosine) = Math.SinCos(turn * Math.PI / 180);
        var centre = new Point(400, 400);
        Point Turned(Point p) => centre + new Vector((cosine * (p.X - centre.X)) - (sine * (p.Y - centre.Y)), (sine * (p.X - centre.X)) + (cosine * (p.Y - centre.Y)));
        var sample = SampleReadings.Lateral();
        var reading = sample with
        {
            Image = sample.Image with { Width = 1600, Height = 1600 },
            Landmarks = [.. sample.Landmarks.Select(l => l with { Position = l.Position is { } p ? Turned(p) + new Vector(400, 400) : null })],
            Lines = [.. sample.Lines.Select(l => l with { Point = Turned(l.Point) + new Vector(400, 400), Direction = Turned(centre + l.Direction) - centre })],
            Circles = [.. sample.Circles.Select(c => c with { Centre = Turned(c.Centre) + new Vector(400, 400), Radius = radius })],
        };

        var captions = Group(Draw(reading), "thirds", "anterior-humeral-line.position").Elements(Svg + "text").ToList();

        Assert.Equal(["front", "back", "capitellum in thirds"], captions.Select(c => c.Value));
        var boxes = captions.Select(Box).ToList();
        Assert.All(from a in boxes from b in boxes where a != b select (a, b), p => Assert.False(
            p.a.Left < p.b.Right && p.b.Left < p.a.Right && p.a.Top < p.b.Bottom && p.b.Top < p.a.Bottom, $"{p.a} and {p.b}"));

        static (double Left, double Top, double Right, double Bottom) Box(XElement text)
        {
            double At(string name) => double.Parse((text.Attribute(name) ?? text.Parent!.Attribute(name))!.Value, System.Globalization.CultureInfo.InvariantCulture);
            var (x, y, size) = (At("x"), At("y"), At("font-size"));
            return (x, y - (0.8 * size), x + (0.58 * size * text.Value.Length), y + (0.2 * size));
        }
    }

    [Theory]
    [InlineData("lateral")]
    [InlineData("ap")]
    [InlineData("refused")]
    public void Overlay_CarriesTheCautionAndNoReassuringWord(string sample)
    {
        var reading = sample switch { "lateral" => SampleReadings.Lateral(), "ap" => SampleReadings.Ap(), _ => SampleReadings.Refused() };
        var root = Draw(reading);
        Assert.Equal(Caution.Text, root.Element(Svg + "desc")!.Value);
        Assert.Contains(root.Descendants(Svg + "text"), t => t.Value.Contains(Caution.LastSentence, StringComparison.Ordinal));
        var words = string.Join('\n', root.Descendants(Svg + "text").Select(t => t.Value));
        ForbiddenWords.AssertNone(words, "The overlay");
        Assert.DoesNotContain('%', words);
    }

    [Fact]
    public void Refusal_IsWordsOnly()
    {
        var root = Draw(SampleReadings.Refused());
        var overlay = root.Elements(Svg + "g").Single(g => g.Attribute("id")?.Value == "overlay");
        Assert.All(overlay.Elements(Svg + "g").Elements(), e => Assert.Equal("text", e.Name.LocalName));
        Assert.Contains("The film does not look like an elbow.", overlay.Value, StringComparison.Ordinal);
        Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName is "path" or "ellipse");
    }

    [Fact]
    public void WithheldMeasurement_LeavesNoLineLabelOrFigure()
    {
        var reading = SampleReadings.Lateral();
        const string name = "anterior-humeral-line.position";
        reading = reading with
        {
            Lines = [.. reading.Lines.Where(l => l.Name != name)],
            Measurements = [.. reading.Measurements.Select(m => m.Name == name
                ? m with { Value = null, Redraw95 = null, Zones = null, State = MeasurementState.Withheld, Reasons = ["physis-closed"] }
                : m)],
        };
        var root = Draw(reading);
        Assert.DoesNotContain(root.Descendants(), e => e.Attribute("data-name")?.Value == name);
        var words = string.Join('\n', root.Descendants(Svg + "text").Select(t => t.Value));
        Assert.DoesNotContain("0.53", words, StringComparison.Ordinal);
        Assert.DoesNotContain("capitellum in thirds", words, StringComparison.Ordinal);
    }

    [Fact]
    public void LineWithoutAMeasurement_IsNotDrawn()
    {
        var reading = SampleReadings.Ap();
        reading = reading with { Measurements = [.. reading.Measurements.Where(m => !m.Name.Contains("neck", StringComparison.Ordinal))] };
        Assert.DoesNotContain(Draw(reading).Descendants(), e => e.Attribute("data-name")?.Value == "radiocapitellar-line.ap.neck.offset");
    }

    [Fact]
    public void NoGreenAndNoRed()
    {
        var colours = Draw(SampleReadings.Lateral()).Descendants()
            .SelectMany(e => new[] { e.Attribute("fill")?.Value, e.Attribute("stroke")?.Value })
            .OfType<string>().Where(c => c.StartsWith('#') && c.Length == 7).Distinct(StringComparer.Ordinal);
        foreach (var colour in colours)
        {
            var (r, g, b) = (Channel(colour, 1), Channel(colour, 3), Channel(colour, 5));
            Assert.False(g > r + 40 && g > b + 40, $"{colour} is green.");
            Assert.False(r > g + 40 && r > b + 40, $"{colour} is red.");
        }
    }

    private static XElement Draw(FilmReading reading) => XDocument.Parse(Encoding.UTF8.GetString(OverlaySvg.Write(reading))).Root!;

    private static XElement Group(XElement root, string kind, string name) => root.Descendants(Svg + "g")
        .Single(g => g.Attribute("class")?.Value == kind && g.Attribute("data-name")?.Value == name);

    private static int Channel(string colour, int at) => int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    private static List<(Point From, Point To)> Segments(XElement path)
    {
        var points = path.Attribute("d")!.Value.TrimStart('M').TrimEnd('Z').Split('L')
            .Select(p => p.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray())
            .Select(p => new Point(p[0], p[1])).ToList();
        return [.. points.Zip(points.Skip(1))];
    }

    private static double Distance(Point p, Point a, Point b)
    {
        var along = b - a;
        var share = Math.Clamp((p - a).Dot(along) / along.Dot(along), 0, 1);
        return p.DistanceTo(a + (along * share));
    }
}
