using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Testing;
using ElbowAssist.Testing.DrawnElbows;

namespace ElbowAssist.Drawing.Tests;

public sealed class StudyReportTests
{
    public static TheoryData<string> Demos => ["adult-effusion", "child-supracondylar"];

    [Theory]
    [MemberData(nameof(Demos))]
    public void ThePage_LoadsNothingFromAnywhere(string name)
    {
        var html = Html(Study(name));
        Assert.DoesNotMatch(new Regex(@"(src|href|url)\s*[=(]\s*[""']?\s*(https?:)?//", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)), html);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("default-src 'none'", html, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void PageAndText_CarryTheCautionFirstAndLast(string name)
    {
        var text = StudyReport.Text(Study(name));
        var flat = Regex.Replace(text, @"\s+", " ", RegexOptions.None, TimeSpan.FromSeconds(5));
        Assert.Equal(2, Regex.Count(flat, Regex.Escape(Caution.Text), RegexOptions.None, TimeSpan.FromSeconds(5)));
        Assert.EndsWith(Caution.LastSentence, flat.TrimEnd(), StringComparison.Ordinal);
        var body = XDocument.Parse(Html(Study(name)).Replace("<!DOCTYPE html>", "", StringComparison.Ordinal)).Root!.Element("body")!;
        var cautions = body.Elements("p").Where(p => ((string?)p.Attribute("class"))?.StartsWith("caution", StringComparison.Ordinal) == true).ToList();
        Assert.Equal([Caution.Text, Caution.Text], cautions.Select(c => c.Value));
        Assert.Same(body.Elements().Last(), cautions[1]);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Text_FitsALineOfDictation(string name) =>
        Assert.All(StudyReport.Text(Study(name)).Split('\n'), line => Assert.True(line.Length <= 78, line));

    [Theory]
    [MemberData(nameof(Demos))]
    public void Sources_AreListedOnce(string name)
    {
        var text = Flat(StudyReport.Text(Study(name)));
        var sources = Regex.Split(text[text.LastIndexOf("SOURCES", StringComparison.Ordinal)..], @"- \[[0-9]+\] ", RegexOptions.None, TimeSpan.FromSeconds(5)).Skip(1).ToList();

        // A journal with year, volume and page is one publication, however its authors are written.
        var places = sources.Select(s => Regex.Match(s, @"[0-9]{4};[0-9]+\([^)]+\):[^ ,;]+", RegexOptions.None, TimeSpan.FromSeconds(5)).Value).Where(p => p.Length > 0).ToList();
        Assert.NotEmpty(places);
        Assert.Equal(places.Distinct(StringComparer.Ordinal), places);
    }

    [Fact]
    public void LandmarksWithoutASpread_AreSaidToHaveAnAssumedOne()
    {
        var film = DrawnStudies.Film("f.png", new DrawnElbow(), View.Lateral, Side.Left, new Patient(41 * 12, Sex.Female));
        Study Assembled(Covariance? spread) => StudyAssembler.Assemble(new()
        {
            Tool = DrawnStudies.Tool,
            Films =
            [
                film with
                {
                    Reading = ReadingAssembler.Default.Assemble(new ReadingInput
                    {
                        Tool = DrawnStudies.Tool,
                        Image = film.Reading.Image,
                        View = film.Reading.View,
                        Patient = film.Reading.Patient,
                        Landmarks = [.. film.Reading.Landmarks.Select(l => l with { Covariance = spread, Source = LandmarkSource.Reader })],
                    }),
                },
            ],
        });

        Assert.Contains("their spread assumed", Html(Assembled(null)), StringComparison.Ordinal);
        Assert.Contains(AssumedSpread.Note, Flat(StudyReport.Text(Assembled(null))), StringComparison.Ordinal);
        Assert.DoesNotContain("assumed", StudyReport.Text(Assembled(Covariance.Isotropic(2))), StringComparison.Ordinal);
    }

    [Fact]
    public void TheBaumannAngleInTheOtherConvention_StandsBesideEachFilmsValue()
    {
        var html = Html(Study("child-supracondylar"));
        var study = Study("child-supracondylar");
        foreach (var angle in study.Films.SelectMany(f => f.Reading.Measurements).Where(m => m is { Name: "baumann-angle", Value: not null }))
        {
            Assert.Contains(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Convention B: {90 - angle.Value:0.0}"), html, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void FilmsOnThePage_NameTheirLinesByLettersWithAKey(string name)
    {
        var body = XDocument.Parse(Html(Study(name)).Replace("<!DOCTYPE html>", "", StringComparison.Ordinal)).Root!.Element("body")!;
        foreach (var figure in body.Descendants("figure"))
        {
            var data = figure.Element("img")!.Attribute("src")!.Value;
            var film = XDocument.Parse(Encoding.UTF8.GetString(Convert.FromBase64String(data[(data.IndexOf(',', StringComparison.Ordinal) + 1)..]))).Root!;
            var unit = film.Attribute("viewBox")!.Value.Split(' ').Select(v => double.Parse(v, System.Globalization.CultureInfo.InvariantCulture)).Max() / 1000;
            var letters = film.Descendants().Where(e => e.Name.LocalName == "text" && e.Value.Length == 1).ToList();
            Assert.NotEmpty(letters);
            Assert.All(letters, l =>
            {
                Assert.Contains(l.Value + " ", figure.Element("figcaption")!.Value, StringComparison.Ordinal);
                Assert.True(double.Parse((l.Attribute("font-size") ?? l.Parent!.Attribute("font-size"))!.Value, System.Globalization.CultureInfo.InvariantCulture) >= 30 * unit);
            });
        }
    }

    [Fact]
    public void ReadersFindingsAndToolsMeasurements_StandApart()
    {
        var body = XDocument.Parse(Html(Study("child-supracondylar")).Replace("<!DOCTYPE html>", "", StringComparison.Ordinal)).Root!.Element("body")!;
        var reader = string.Concat(body.Elements("div").Where(d => (string?)d.Attribute("class") == "reader").Select(d => d.Value));
        var tool = string.Concat(body.Descendants("div").Where(d => (string?)d.Attribute("class") == "tool").Select(d => d.Value));
        Assert.Contains("fracture seen", reader, StringComparison.Ordinal);
        Assert.Contains("traced, break", reader, StringComparison.Ordinal);
        Assert.Contains("shown only after the reader's own answers", reader, StringComparison.Ordinal);
        Assert.DoesNotContain("83°", reader, StringComparison.Ordinal);
        Assert.Contains("Baumann angle", tool, StringComparison.Ordinal);
        Assert.DoesNotContain("traced", tool, StringComparison.Ordinal);
    }

    [Fact]
    public void BothSides_StandBesideEachOtherWithTheirDifference()
    {
        var text = Flat(StudyReport.Text(Study("child-supracondylar")));
        Assert.Contains("the whole interval lies beyond the limit of 5°", text, StringComparison.Ordinal);
        Assert.Contains("capitellum lies behind the line", text, StringComparison.Ordinal);
        Assert.Contains("Medial column", text[text.IndexOf("NOT JUDGED", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public void AWithheldValue_StandsNowhere()
    {
        var patient = new Patient(41 * 12, Sex.Female);
        var film = DrawnStudies.Film("f.png", new DrawnElbow(), View.Lateral, Side.Left, patient, spacingMm: null);
        var gap = film.Reading.Measurements.Single(m => m.Name == "ulnohumeral-gap");
        Assert.Equal(MeasurementState.Withheld, gap.State);
        var study = StudyAssembler.Assemble(new() { Tool = DrawnStudies.Tool, Films = [film] });
        Assert.DoesNotContain(" mm (", StudyReport.Text(study), StringComparison.Ordinal);
        Assert.Contains("Ulnohumeral gap", StudyReport.Text(study), StringComparison.Ordinal);
    }

    [Fact]
    public void AtMostThreePrompts_AreShownAndTheRestAnnounced()
    {
        var study = Study("child-supracondylar");
        Assert.True(study.Prompts.Count > 3);
        var text = StudyReport.Text(study);
        var shown = text[text.IndexOf("TO THINK OF", StringComparison.Ordinal)..text.IndexOf("FILMS\n", StringComparison.Ordinal)];
        Assert.Equal(4, shown.Split('\n').Count(l => l.StartsWith("- ", StringComparison.Ordinal)));
        Assert.Contains("wait", shown, StringComparison.Ordinal);
    }

    [Fact]
    public void ProposalsVisibleFromTheStart_AreSaidToBe()
    {
        var walk = new WalkScript(WalkDefinition.AdultWalk, proposalsVisibleFromStart: true).Answer("effusion.call", "yes").Record;
        var study = StudyAssembler.Assemble(new()
        {
            Tool = DrawnStudies.Tool,
            Walk = walk,
            Films = [DrawnStudies.Film("f.png", new DrawnElbow(), View.Lateral, Side.Left, new(480, Sex.Male))],
        });
        Assert.Contains("visible from the start", Flat(StudyReport.Text(study)), StringComparison.Ordinal);
        Assert.Contains("proposals on view", Html(study), StringComparison.Ordinal);
    }

    [Fact]
    public void HostileWords_StayWords()
    {
        var walk = new WalkScript(WalkDefinition.AdultWalk).Note("history.mechanism", "<img src=x onerror=alert(1)> & \"fall\"").Record;
        var study = StudyAssembler.Assemble(new()
        {
            Tool = DrawnStudies.Tool,
            Walk = walk,
            Films = [DrawnStudies.Film("<b>.png", new DrawnElbow(), View.Lateral, Side.Left, new(480, Sex.Male))],
        });
        var html = Html(study);
        Assert.DoesNotContain("<img src=x", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>.png", html, StringComparison.Ordinal);
    }

    [Fact]
    public void AStoppedExport_MakesNoReport()
    {
        var film = DrawnStudies.Film("f.png", new DrawnElbow(), View.Lateral, Side.Left, new(480, Sex.Male)) with
        {
            SideStatements = [new("sidecar", Side.Right)],
        };
        var study = StudyAssembler.Assemble(new() { Tool = DrawnStudies.Tool, Films = [film] });
        Assert.Throws<InvalidOperationException>(() => StudyReport.Html(study));
        Assert.Throws<InvalidOperationException>(() => StudyReport.Text(study));
    }

    /// <summary>Many studies of drawn elbows of every age, shape, view, context and mark: no output reassures, none lacks the caution.</summary>
    [Fact]
    public void ManyStudies_NeverReassure()
    {
        var random = new Random(20300304);
        for (var i = 0; i < 60; i++)
        {
            var study = RandomStudies.Next(random);
            foreach (var output in new[] { StudyReport.Text(study), Html(study) })
            {
                var words = Regex.Replace(output, @"base64,[A-Za-z0-9+/=]+", "", RegexOptions.None, TimeSpan.FromSeconds(5));
                ForbiddenWords.AssertNone(words, FormattableString.Invariant($"study {i}"));
                Assert.Contains(Caution.LastSentence, words, StringComparison.Ordinal);
                Assert.DoesNotContain("NaN", words, StringComparison.Ordinal);
                Assert.DoesNotContain("∞", words, StringComparison.Ordinal);
            }
        }
    }

    private static Study Study(string name) => DemoStudies.All.Single(d => d.Name == name).Assemble();

    private static string Html(Study study) => Encoding.UTF8.GetString(StudyReport.Html(study));

    private static string Flat(string text) => Regex.Replace(text, @"\s+", " ", RegexOptions.None, TimeSpan.FromSeconds(5));
}
