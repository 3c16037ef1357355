using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Fhir;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Testing;
using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Exchange.Tests.Fhir;

/// <summary>Bundles hold to FHIR R4 as the FHIR .NET library (Hl7.Fhir.R4) parses it in strict mode: types, cardinalities, code lists.</summary>
public sealed partial class FhirBundleTests
{
    private static readonly DateTimeOffset Made = new(2026, 4, 1, 10, 17, 0, TimeSpan.Zero);
    private static readonly DicomSource Source = new DicomFilmReader().Read(new SampleFilm().File()).Source;
    private static readonly JsonSerializerOptions Strict = new JsonSerializerOptions().ForFhir(ModelInfo.ModelInspector).UsingMode(DeserializationMode.Strict);

    [Fact]
    public void EveryReading_IsAValidBundle_WithTheSameValues()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var reading = SampleReading.Of(seed);
            var json = FhirBundle.Write(reading, "Patient/invented", Made, seed % 2 == 0 ? Source : null);
            var bundle = JsonSerializer.Deserialize<Bundle>(json, Strict)!;
            var observations = bundle.Entry.Select(e => e.Resource).OfType<Observation>().ToList();

            Assert.Equal(reading.Measurements.Select(m => m.Value), observations.Select(o => (double?)(o.Value as Quantity)?.Value), (a, b) => a is null ? b is null : Math.Abs(a.Value - b!.Value) < 1e-12);
            Assert.All(reading.Measurements.Zip(observations).Where(p => p.First.Value is null), p => Assert.NotNull(p.Second.DataAbsentReason));
            Assert.All(bundle.Entry.Select(e => e.Resource).OfType<DiagnosticReport>(), r => Assert.Equal(DiagnosticReport.DiagnosticReportStatus.Preliminary, r.Status));
            var known = bundle.Entry.Select(e => e.FullUrl).Append("Patient/invented").ToHashSet();
            Assert.All(References().Matches(Encoding.UTF8.GetString(json)), r => Assert.Contains(r.Groups["to"].Value, known));
        }
    }

    [Fact]
    public void Bundle_CarriesTheCaution_NoReassurance_AndNoIdentity()
    {
        for (var seed = 0; seed < 10; seed++)
        {
            var text = Encoding.UTF8.GetString(FhirBundle.Write(SampleReading.Of(seed), "Patient/invented", Made, Source));

            Assert.Contains("Nothing here excludes a fracture.", text, StringComparison.Ordinal);
            Assert.DoesNotContain("PHANTOM", text, StringComparison.OrdinalIgnoreCase);
            ForbiddenWords.AssertNone(text, "the bundle");
        }
    }

    [GeneratedRegex("\"reference\": \"(?<to>[^\"]+)\"", RegexOptions.ExplicitCapture)]
    private static partial Regex References();
}
