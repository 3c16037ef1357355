using System.Text;
using System.Text.RegularExpressions;
using ElbowAssist.Drawing;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Fhir;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Testing;
using ElbowAssist.Testing.DrawnElbows;
using DicomSample = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.EndToEnd;

/// <summary>Every kind of output of many studies: none reassures, none lacks the caution.</summary>
public sealed partial class EveryOutputTests
{
    private static readonly DateTimeOffset Made = new(2030, 3, 4, 9, 30, 0, TimeSpan.Zero);

    [Fact]
    public void EveryOutputOfManyStudies_CarriesTheCautionAndNeverReassures()
    {
        var random = new Random(20300305);
        for (var i = 0; i < 40; i++)
        {
            var study = RandomStudies.Next(random);
            foreach (var (kind, content) in Outputs(study))
            {
                var words = Picture().Replace(content, "");
                ForbiddenWords.AssertNone(words, FormattableString.Invariant($"{kind} of study {i}"));
                Assert.True(words.Contains(Caution.LastSentence, StringComparison.Ordinal), FormattableString.Invariant($"{kind} of study {i} lacks the caution."));
            }
        }
    }

    private static IEnumerable<(string Kind, string Content)> Outputs(Study study)
    {
        yield return ("study.json", Encoding.UTF8.GetString(StudyJson.Write(study)));
        if (!study.ExportIsStopped)
        {
            yield return ("report.html", Encoding.UTF8.GetString(StudyReport.Html(study)));
            yield return ("report.txt", StudyReport.Text(study));
        }

        foreach (var reading in study.Films.Select(f => f.Reading))
        {
            yield return ("reading.json", Encoding.UTF8.GetString(ReadingJson.Write(reading)));
            yield return ("overlay.svg", Encoding.UTF8.GetString(OverlaySvg.Write(reading)));
            yield return ("FHIR bundle", Encoding.UTF8.GetString(FhirBundle.Write(reading, "Patient/invented", Made)));
            var source = new DicomFilmReader().Read(new DicomSample { Width = reading.Image.Width, Height = reading.Image.Height }.File()).Source;
            yield return ("structured report", Encoding.UTF8.GetString(StructuredReport.Write(reading, source, new ReportOptions(Made))));
            yield return ("presentation state", Encoding.UTF8.GetString(PresentationState.Write(reading, source, Made)));
        }
    }

    [GeneratedRegex("base64,[A-Za-z0-9+/=]+")]
    private static partial Regex Picture();
}
