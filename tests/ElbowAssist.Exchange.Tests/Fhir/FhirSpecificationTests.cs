using System.Text.Json;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Fhir;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using Firely.Fhir.Validation;
using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using Hl7.Fhir.Specification.Source;
using Hl7.Fhir.Specification.Terminology;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Exchange.Tests.Fhir;

/// <summary>
/// Bundles against the StructureDefinitions, invariants and value sets that HL7 publishes with FHIR R4 (4.0.1), by the
/// Firely validator (Firely.Fhir.Validation.R4) without a network.
/// </summary>
public sealed class FhirSpecificationTests
{
    private static readonly DateTimeOffset Made = new(2026, 4, 1, 10, 17, 0, TimeSpan.Zero);
    private static readonly DicomSource Source = new DicomFilmReader().Read(new SampleFilm().File()).Source;
    private static readonly JsonSerializerOptions Strict = new JsonSerializerOptions().ForFhir(ModelInfo.ModelInspector).UsingMode(DeserializationMode.Strict);

    private readonly Validator validator = Specification();

    [Fact]
    public void Bundles_HaveNoErrorByThePublishedDefinitions()
    {
        // Seed 4 is refused; the others differ in view, spacing, states and models.
        foreach (var seed in Enumerable.Range(0, 6))
        {
            var json = FhirBundle.Write(SampleReading.Of(seed), "Patient/invented", Made, seed % 2 == 0 ? Source : null);

            var outcome = validator.Validate(JsonSerializer.Deserialize<Bundle>(json, Strict)!);

            Assert.True(outcome.Success, $"reading {seed}: {string.Join('\n', Errors(outcome))}");
        }
    }

    [Fact]
    public void Validator_FindsWhatBreaksTheDefinitions()
    {
        var bundle = JsonSerializer.Deserialize<Bundle>(FhirBundle.Write(SampleReading.Of(1), "Patient/invented", Made), Strict)!;
        var observation = bundle.Entry.Select(e => e.Resource).OfType<Observation>().First(o => o.Value is not null);
        observation.DataAbsentReason = new CodeableConcept { Text = "A value and a reason for its absence at once." };

        Assert.Contains(Errors(validator.Validate(bundle)), e => e.Contains("obs-6", StringComparison.Ordinal));
    }

    private static IEnumerable<string> Errors(OperationOutcome outcome) => outcome.Issue
        .Where(i => i.Severity is OperationOutcome.IssueSeverity.Error or OperationOutcome.IssueSeverity.Fatal)
        .Select(i => $"{i.Details?.Text} {string.Join(", ", i.Expression)}");

    private static Validator Specification()
    {
        var source = new CachedResolver(new ZipSource(Path.Combine(AppContext.BaseDirectory, "specification.zip")));
        return new Validator(source, new LocalTerminologyService(source));
    }
}
