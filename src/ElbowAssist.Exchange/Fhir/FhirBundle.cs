using System.Text.Json;
using System.Text.Json.Nodes;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Fhir;

/// <summary>
/// Writes a reading as an HL7 FHIR R4 bundle (4.0.1): a preliminary DiagnosticReport, one Observation for each
/// measurement, the Device that made them and, for a DICOM film, the ImagingStudy. The patient is named by a reference the
/// caller gives; nothing else identifies anyone.
/// </summary>
public static class FhirBundle
{
    private const string OwnCodes = "urn:elbowassist:codes";
    private const string Snomed = "http://snomed.info/sct";
    private const string Ucum = "http://unitsofmeasure.org";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>The bundle as UTF-8 JSON.</summary>
    /// <param name="reading">The reading; a refused one gives a report without results that says why.</param>
    /// <param name="patient">Reference to the patient in the receiving system, e.g. <c>Patient/123</c>.</param>
    /// <param name="made">When the reading was made.</param>
    /// <param name="source">The DICOM film, or null.</param>
    public static byte[] Write(FilmReading reading, string patient, DateTimeOffset made, DicomSource? source = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var resources = new List<(string Id, JsonObject Resource)> { ("device", Device(reading)) };
        if (source is not null)
        {
            resources.Add(("study", Study(source, patient)));
        }

        var time = made.ToString("yyyy-MM-ddTHH:mm:sszzz", System.Globalization.CultureInfo.InvariantCulture);
        var observations = reading.Measurements.Select((m, i) => (Id: $"measurement-{(i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}", Resource: Observation(m, reading, patient, time, source is not null))).ToList();
        resources.AddRange(observations);
        resources.Add(("report", Report(reading, patient, time, [.. observations.Select(o => o.Id)], source is not null)));
        var bundle = new JsonObject
        {
            ["resourceType"] = "Bundle",
            ["type"] = "collection",
            ["entry"] = new JsonArray([.. resources.Select(r => new JsonObject { ["fullUrl"] = FullUrl(r.Id), ["resource"] = r.Resource })]),
        };
        return JsonSerializer.SerializeToUtf8Bytes(bundle, Indented);
    }

    private static JsonObject Device(FilmReading reading) => new()
    {
        ["resourceType"] = "Device",
        ["manufacturer"] = "ElbowAssist project",
        ["deviceName"] = new JsonArray(new JsonObject { ["name"] = reading.Tool.Name, ["type"] = "model-name" }),
        ["version"] = new JsonArray(
        [
            new JsonObject { ["value"] = reading.Tool.Version },
            .. reading.Models.Select(m => new JsonObject { ["value"] = $"{m.Name} {m.Version}" }),
        ]),
        ["safety"] = new JsonArray(Text(reading.CautionText)),
    };

    private static JsonObject Study(DicomSource source, string patient) => new()
    {
        ["resourceType"] = "ImagingStudy",
        ["identifier"] = new JsonArray(new JsonObject { ["system"] = "urn:dicom:uid", ["value"] = "urn:oid:" + source.StudyInstanceUid }),
        ["status"] = "available",
        ["subject"] = Reference(patient),
        ["series"] = new JsonArray(new JsonObject
        {
            ["uid"] = source.SeriesInstanceUid,
            ["modality"] = Coding("http://dicom.nema.org/resources/ontology/DCM", source.Dataset.Text(Dicom.Format.Tag.Modality) ?? "DX", null),
            ["bodySite"] = Coding(Snomed, StandardCodes.ElbowJoint),
            ["instance"] = new JsonArray(new JsonObject
            {
                ["uid"] = source.SopInstanceUid,
                ["sopClass"] = Coding("urn:ietf:rfc:3986", "urn:oid:" + source.SopClassUid, null),
            }),
        }),
    };

    private static JsonObject Observation(Measurement measurement, FilmReading reading, string patient, string time, bool hasStudy)
    {
        var code = PrivateCodes.Measurement(measurement.Name);
        var observation = new JsonObject
        {
            ["resourceType"] = "Observation",
            ["status"] = "preliminary",
            ["category"] = new JsonArray(new JsonObject
            {
                ["coding"] = new JsonArray(Coding("http://terminology.hl7.org/CodeSystem/observation-category", "imaging", "Imaging")),
            }),
            ["code"] = new JsonObject { ["coding"] = new JsonArray(Coding(OwnCodes, code)), ["text"] = $"Proposal, second look: {code.Meaning}" },
            ["subject"] = Reference(patient),
            ["effectiveDateTime"] = time,
            ["bodySite"] = new JsonObject { ["coding"] = new JsonArray(Coding(Snomed, StandardCodes.ElbowJoint)) },
            ["device"] = Reference(FullUrl("device")),
        };
        if (hasStudy)
        {
            observation["derivedFrom"] = new JsonArray(Reference(FullUrl("study")));
        }

        if (measurement.Value is { } value)
        {
            observation["valueQuantity"] = Quantity(value, measurement.Unit);
            observation["note"] = new JsonArray(new JsonObject { ["text"] = measurement.Note });
            if (measurement.Redraw95 is { } interval)
            {
                observation["component"] = new JsonArray(new JsonObject
                {
                    ["code"] = Text("Where the value would fall in 95 of 100 repeated layings on this film"),
                    ["valueRange"] = new JsonObject { ["low"] = Quantity(interval.Low, measurement.Unit), ["high"] = Quantity(interval.High, measurement.Unit) },
                });
            }
        }
        else
        {
            var sentences = reading.Reasons.Where(r => measurement.Reasons.Contains(r.Code)).Select(r => r.Text);
            var absent = Text(string.Join(' ', sentences.DefaultIfEmpty(string.Join(", ", measurement.Reasons))));
            absent["coding"] = new JsonArray(Coding("http://terminology.hl7.org/CodeSystem/data-absent-reason", "not-performed", "Not Performed"));
            observation["dataAbsentReason"] = absent;
        }

        return observation;
    }

    private static JsonObject Report(FilmReading reading, string patient, string time, IReadOnlyList<string> results, bool hasStudy)
    {
        var report = new JsonObject
        {
            ["resourceType"] = "DiagnosticReport",
            ["status"] = "preliminary",
            ["code"] = new JsonObject { ["coding"] = new JsonArray(Coding("http://loinc.org", "18748-4", "Diagnostic imaging study")) },
            ["subject"] = Reference(patient),
            ["effectiveDateTime"] = time,
            ["conclusion"] = reading.Adequacy.Refused
                ? $"No measurement was made. {string.Join(' ', reading.Reasons.Select(r => r.Text))} {reading.CautionText}"
                : $"Proposals for a second look, not verified. {reading.CautionText}",
        };
        if (results.Count > 0)
        {
            report["result"] = new JsonArray([.. results.Select(id => Reference(FullUrl(id)))]);
        }

        if (hasStudy)
        {
            report["imagingStudy"] = new JsonArray(Reference(FullUrl("study")));
        }

        return report;
    }

    private static JsonObject Quantity(double value, string unit)
    {
        var code = StandardCodes.Unit(unit);
        return new() { ["value"] = value, ["unit"] = code.Meaning, ["system"] = Ucum, ["code"] = code.Value };
    }

    private static JsonObject Coding(string system, Code code) => Coding(system, code.Value, code.Meaning);

    private static JsonObject Coding(string system, string code, string? display)
    {
        var coding = new JsonObject { ["system"] = system, ["code"] = code };
        if (display is not null)
        {
            coding["display"] = display;
        }

        return coding;
    }

    private static JsonObject Reference(string reference) => new() { ["reference"] = reference };

    private static JsonObject Text(string text) => new() { ["text"] = text };

    // Entries refer to each other by URN, so that the bundle stands alone; names give the same URN each time.
    private static string FullUrl(string id)
    {
        var hash = System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes("elbowassist " + id));
        hash[7] = (byte)((hash[7] & 0x0F) | 0x80);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return "urn:uuid:" + new Guid(hash.AsSpan(0, 16)).ToString("D");
    }
}
