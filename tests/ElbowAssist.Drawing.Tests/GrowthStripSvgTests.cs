using System.Text;
using System.Xml.Linq;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules.Growth;
using ElbowAssist.Drawing.Growth;
using ElbowAssist.Reading;
using ElbowAssist.Testing;

namespace ElbowAssist.Drawing.Tests;

public sealed class GrowthStripSvgTests
{
    private static readonly Dictionary<GrowthCentre, CentreMark> Marks = new()
    {
        [GrowthCentre.RadialHead] = CentreMark.Seen,
        [GrowthCentre.Olecranon] = CentreMark.Seen,
    };

    [Fact]
    public void BoyOfFour_IsToldByWords()
    {
        var words = Words(new(48, Sex.Male), Marks);
        Assert.Contains("seen: possible", words);
        Assert.Contains("seen: unexpected", words);
        Assert.Contains("4 years", words);
        Assert.Equal(2, words.Count(w => w == "may swap"));
    }

    [Fact]
    public void SexUnknown_ShowsBothTables()
    {
        Assert.Equal(6, Words(new(48, null), Marks).Count(w => w == "F"));
        Assert.Equal(6, Words(new(48, null), Marks).Count(w => w == "M"));
        Assert.DoesNotContain("F", Words(new(48, Sex.Female), Marks));
    }

    [Fact]
    public void AgeUnknown_JudgesNothing() =>
        Assert.DoesNotContain(Words(Patient.Unknown, Marks), w => w.Contains("expected", StringComparison.Ordinal) && w.StartsWith("seen", StringComparison.Ordinal));

    [Fact]
    public void TheAge_StandsAtItsPlaceOnTheAxis()
    {
        // The axis runs from 128 at birth to 566 at 18 years: 9 years lie in the middle, at 347.
        var line = Lines(new(108, Sex.Male)).Single(l => l.Width == 1.6 && l.X1 == l.X2 && l.Y2 - l.Y1 > 200);
        Assert.Equal(347, line.X1, 6);
    }

    [Fact]
    public void TheStrip_CarriesTheCautionAndNoForbiddenWord()
    {
        var svg = Encoding.UTF8.GetString(GrowthStripSvg.Write(new(48, null), Marks));
        Assert.Contains(Caution.LastSentence, svg, StringComparison.Ordinal);
        ForbiddenWords.AssertNone(svg, "growth strip");
    }

    private static List<string> Words(Patient patient, IReadOnlyDictionary<GrowthCentre, CentreMark> marks) =>
        [.. Svg(patient, marks).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];

    private static IEnumerable<(double X1, double X2, double Y1, double Y2, double Width)> Lines(Patient patient) =>
        Svg(patient, Marks).Descendants().Where(e => e.Name.LocalName == "line")
            .Select(e => ((double)e.Attribute("x1")!, (double)e.Attribute("x2")!, (double)e.Attribute("y1")!, (double)e.Attribute("y2")!, (double)e.Attribute("stroke-width")!));

    private static XElement Svg(Patient patient, IReadOnlyDictionary<GrowthCentre, CentreMark> marks) =>
        XDocument.Parse(Encoding.UTF8.GetString(GrowthStripSvg.Write(patient, marks))).Root!;
}
