using System.Text;
using System.Xml.Linq;
using ElbowAssist.Anatomy;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Testing;

namespace ElbowAssist.Drawing.Tests;

/// <summary>Nothing withheld shows in a drawing or a report, over many random films.</summary>
public sealed class WithheldTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void OnlyGivenMeasurements_HaveLinesBandsLabelsOrCircles()
    {
        for (var seed = 0; seed < 1500; seed++)
        {
            var reading = WithheldFilms.Mixed(seed);
            var given = reading.Measurements.Where(m => m.Value is not null).Select(m => m.Name).ToHashSet(StringComparer.Ordinal);
            var circles = reading.Circles.Select(c => c.Name).ToHashSet(StringComparer.Ordinal);
            var root = Draw(reading);
            foreach (var group in root.Descendants(Svg + "g").Where(g => g.Attribute("data-name") is not null))
            {
                var name = group.Attribute("data-name")!.Value;
                switch (group.Attribute("class")?.Value)
                {
                    case "landmark":
                        break;
                    case "circle":
                        Assert.Contains(name, circles);
                        break;
                    default:
                        Assert.Contains(name, given);
                        break;
                }
            }

            // The legend lists what is withheld with reasons in words, and reasons hold no figures. On an AP, prompts with
            // figures of their own follow without a heading.
            string[] words = [.. root.Descendants(Svg + "text").Select(t => t.Value.Trim())];
            var from = Array.IndexOf(words, "Withheld");
            var withheld = from < 0 ? [] : words.Skip(from).TakeWhile(w => w != "Look for yourself").ToList();
            Assert.Equal(reading.Measurements.Any(m => m.State == MeasurementState.Withheld), withheld.Count > 0);
            if (reading.View.Name == View.Lateral)
            {
                Assert.DoesNotContain(withheld, w => w.Any(char.IsAsciiDigit));
            }
        }
    }

    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    public void WithEverythingWithheld_DrawingAndReportAreTheSameForAnyElbow(View view)
    {
        var (drawing, text) = Shown(WithheldFilms.AllWithheld(view, 0));
        for (var seed = 1; seed < 300; seed++)
        {
            var other = Shown(WithheldFilms.AllWithheld(view, seed));
            Assert.Equal(drawing, other.Drawing);
            Assert.Equal(text, other.Text);
        }
    }

    private static (string Drawing, string Text) Shown(FilmReading reading)
    {
        Assert.All(reading.Measurements, m => Assert.Null(m.Value));
        var root = Draw(reading);
        root.Descendants(Svg + "g").Where(g => g.Attribute("class")?.Value == "landmark").Remove();
        var study = StudyAssembler.Assemble(new() { Tool = reading.Tool, Films = [new StudyFilm("film.png", reading, [])] });
        return (root.ToString(), StudyReport.Text(study));
    }

    private static XElement Draw(FilmReading reading) => XDocument.Parse(Encoding.UTF8.GetString(OverlaySvg.Write(reading))).Root!;
}
