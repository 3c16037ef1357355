using System.Text;
using System.Text.Json.Nodes;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Dicom.Reports;
using ElbowAssist.Exchange.Fhir;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Reading;
using ElbowAssist.Testing;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Exchange.Tests.Json;

/// <summary>Nothing withheld stands in a file, over many random films.</summary>
public sealed class WithheldTests
{
    private static readonly DateTimeOffset Made = new(2026, 4, 1, 10, 17, 0, TimeSpan.Zero);
    private static readonly DicomSource Source = new DicomFilmReader().Read(new SampleFilm().File()).Source;

    [Fact]
    public void WithheldMeasurements_HaveNoValueLineOrZoneInJson()
    {
        for (var seed = 0; seed < 2000; seed++)
        {
            var json = JsonNode.Parse(ReadingJson.Write(WithheldFilms.Mixed(seed)))!;
            var lines = json["lines"]!.AsArray().Select(l => (string)l!["name"]!).ToHashSet(StringComparer.Ordinal);
            foreach (var m in json["measurements"]!.AsArray().Where(m => (string)m!["state"]! == "withheld"))
            {
                Assert.Null(m!["value"]);
                Assert.Null(m["redraw95"]);
                Assert.Null(m["zones"]);
                Assert.DoesNotContain((string)m["name"]!, lines);
                Assert.NotEmpty(m["reasons"]!.AsArray());
            }
        }
    }

    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    public void WithEverythingWithheld_NothingButLandmarksDiffersBetweenElbows(View view)
    {
        var (json, fhir) = Files(WithheldFilms.AllWithheld(view, 0));
        for (var seed = 1; seed < 500; seed++)
        {
            var other = Files(WithheldFilms.AllWithheld(view, seed));
            Assert.Equal(json, other.Json);
            Assert.Equal(fhir, other.Fhir);
        }
    }

    [Fact]
    public void ARefusedFilm_LeavesNoLandmarkInAnyFile()
    {
        var whole = WithheldFilms.Mixed(1);
        var refused = whole with
        {
            Adequacy = new Adequacy(true, [new AdequacyCheck("view.elbow", 0.1, 0.5, false, "not-an-elbow")], [], []),
            Landmarks = [],
            Lines = [],
            Circles = [],
            Measurements = [],
            Evidence = [],
            Prompts = [],
            Reasons = [new Reason("not-an-elbow", "This does not look like an elbow.")],
        };
        foreach (var file in new[]
        {
            ReadingJson.Write(refused),
            FhirBundle.Write(refused, "Patient/invented", Made, Source),
            StructuredReport.Write(refused, Source, new ReportOptions(Made)),
            PresentationState.Write(refused, Source, Made),
        })
        {
            var text = Encoding.Latin1.GetString(file);
            foreach (var name in whole.Landmarks.Select(l => l.Name))
            {
                Assert.DoesNotContain(name, text, StringComparison.Ordinal);
            }

            Assert.DoesNotContain("SCOORD", text, StringComparison.Ordinal);
            Assert.DoesNotContain("POLYLINE", text, StringComparison.Ordinal);
        }
    }

    private static (string Json, string Fhir) Files(FilmReading reading)
    {
        Assert.All(reading.Measurements, m => Assert.Null(m.Value));
        reading = reading with { Timing = new Dictionary<string, double>(StringComparer.Ordinal) };
        var json = JsonNode.Parse(ReadingJson.Write(reading))!.AsObject();
        json.Remove("landmarks");

        // Figures of checks on the size of what is seen are no measurements.
        var checks = json["adequacy"]!["checks"]!.AsArray();
        foreach (var check in checks.Where(c => (string)c!["name"]! is "shaft.width-pixels" or "capitellum.diameter").ToList())
        {
            checks.Remove(check);
        }

        return (json.ToJsonString(), Encoding.UTF8.GetString(FhirBundle.Write(reading, "Patient/invented", Made)));
    }
}
