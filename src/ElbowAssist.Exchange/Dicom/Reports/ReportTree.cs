using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Objects;
using ElbowAssist.Reading;
using static ElbowAssist.Exchange.Dicom.Reports.ContentItem;

namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>The content tree of a report by TID 1500 of PS3.16; of a refused reading it says why, and nothing else.</summary>
internal static class ReportTree
{
    public static ContentItem Of(FilmReading reading, DicomSource source, string? reader)
    {
        var groups = new MeasurementGroups(reading, source).All();
        return Container(
            "",
            StandardCodes.ImagingMeasurementReport,
            [
                OfCode(HasConceptModifier, StandardCodes.Language, StandardCodes.English, OfCode(HasConceptModifier, StandardCodes.CountryOfLanguage, StandardCodes.UnitedStates)),
                .. Observers(reading.Tool, reader),
                OfCode(HasConceptModifier, StandardCodes.ProcedureReported, StandardCodes.ImagingProcedure),
                Library(reading, source),
                .. reading.Adequacy.Refused || groups.Count == 0 ? [] : new[] { Container(Contains, StandardCodes.ImagingMeasurements, groups) },
                Container(Contains, StandardCodes.QualitativeEvaluations, [.. Evaluations(reading, groups.Count > 0)]),
            ]);
    }

    private static IEnumerable<ContentItem> Observers(ToolIdentity tool, string? reader)
    {
        yield return OfCode(HasObservationContext, StandardCodes.ObserverType, StandardCodes.Device);
        yield return OfUid(HasObservationContext, StandardCodes.DeviceObserverUid, ObjectHeader.DeviceUid(tool));
        yield return OfText(HasObservationContext, StandardCodes.DeviceObserverName, tool.Name);
        yield return OfText(HasObservationContext, StandardCodes.DeviceObserverManufacturer, ObjectHeader.Manufacturer);
        yield return OfText(HasObservationContext, StandardCodes.DeviceObserverModelName, tool.Name);
        if (reader is not null)
        {
            yield return OfCode(HasObservationContext, StandardCodes.ObserverType, StandardCodes.Person);
            yield return OfPerson(HasObservationContext, StandardCodes.PersonObserverName, reader);
        }
    }

    private static ContentItem Library(FilmReading reading, DicomSource source)
    {
        var items = new List<ContentItem>();
        void Add(Code concept, Code? value)
        {
            if (value is not null)
            {
                items.Add(OfCode(HasAcquisitionContext, concept, value));
            }
        }

        Add(StandardCodes.Modality, StandardCodes.OfModality(source.Dataset.Text(Tag.Modality)));
        Add(StandardCodes.TargetRegion, StandardCodes.ElbowJoint);
        Add(StandardCodes.ImageLaterality, StandardCodes.Of(reading.Side));
        Add(StandardCodes.ImageView, StandardCodes.Of(reading.View.Name));
        if (reading.Image is { RowSpacingMm: { } row, ColumnSpacingMm: { } column })
        {
            items.Add(OfNumber(HasAcquisitionContext, StandardCodes.HorizontalPixelSpacing, column, StandardCodes.Unit("mm")));
            items.Add(OfNumber(HasAcquisitionContext, StandardCodes.VerticalPixelSpacing, row, StandardCodes.Unit("mm")));
        }

        items.Add(OfImage(Contains, source));
        return Container(Contains, StandardCodes.ImageLibrary, [Container(Contains, StandardCodes.ImageLibraryGroup, items)]);
    }

    private static IEnumerable<ContentItem> Evaluations(FilmReading reading, bool anything)
    {
        var sentences = reading.Reasons.ToDictionary(r => r.Code, r => r.Text, StringComparer.Ordinal);
        if (reading.Adequacy.Refused)
        {
            yield return OfCode(Contains, StandardCodes.ImageQuality, StandardCodes.Unusable);
        }

        if (reading.Adequacy.Refused || !anything)
        {
            foreach (var reason in reading.Reasons)
            {
                yield return OfCode(Contains, PrivateCodes.Refusal, PrivateCodes.Reason(reason.Code));
            }

            yield return OfCode(Contains, PrivateCodes.Status, StandardCodes.NoAlgorithmsSucceeded);
        }

        if (!reading.Adequacy.Refused)
        {
            foreach (var measurement in reading.Measurements.Where(m => m.State == MeasurementState.Withheld))
            {
                yield return OfCode(Contains, PrivateCodes.Measurement(measurement.Name), StandardCodes.Undetermined);
            }

            foreach (var evidence in reading.Evidence.Where(e => e.State == EvidenceState.NotAssessable))
            {
                yield return OfCode(Contains, PrivateCodes.Measurement(evidence.Name), StandardCodes.Undetermined);
            }
        }

        foreach (var comment in Comments(reading, sentences))
        {
            yield return OfText(Contains, StandardCodes.Comment, comment);
        }
    }

    private static IEnumerable<string> Comments(FilmReading reading, Dictionary<string, string> sentences)
    {
        yield return Wording.Label("every value here is made by a program from proposed landmarks; the reader decides.");
        foreach (var reason in sentences.Values)
        {
            yield return reason;
        }

        if (!reading.Adequacy.Refused)
        {
            foreach (var withheld in reading.Measurements.Where(m => m.State == MeasurementState.Withheld))
            {
                yield return $"Withheld: {PrivateCodes.Measurement(withheld.Name).Meaning} ({string.Join(", ", withheld.Reasons)}).";
            }
        }

        foreach (var prompt in reading.Prompts)
        {
            yield return prompt.Text;
        }

        yield return reading.CautionText;
    }
}
