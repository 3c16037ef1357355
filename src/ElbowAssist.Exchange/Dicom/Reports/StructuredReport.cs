using System.Text;
using ElbowAssist.Exchange.Dicom.Codes;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Objects;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>Writes a reading as a DICOM structured report by TID 1500, "Measurement Report".</summary>
public static class StructuredReport
{
    private const int SeriesNumber = 9100;

    /// <summary>
    /// The bytes of a DICOM file. The same reading of the same image always has the same SOP Instance UID.
    /// </summary>
    /// <param name="reading">The reading; a refused one gives a report that says why.</param>
    /// <param name="source">The image it is about.</param>
    /// <param name="options">When, and which kind.</param>
    public static byte[] Write(FilmReading reading, DicomSource source, ReportOptions options)
    {
        var tree = ReportTree.Of(reading, source, options.Reader);
        var sopClass = options.Kind == ReportKind.Comprehensive ? Uids.ComprehensiveReport : Uids.Comprehensive3DReport;
        var builder = ObjectHeader.Start(source, reading.Tool, sopClass, "SR", "ElbowAssist: proposals, second look");
        var encoding = builder.Encoding;
        ContentEncoding.Write(tree, builder);
        var content = Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(DatasetWriter.Write(builder.Build())));
        var partial = reading.Measurements.Any(m => m.State == MeasurementState.Withheld) || reading.Adequacy.Refused;
        builder
            .Text(Tag.SopInstanceUid, Uids.FromName("report", sopClass, source.SopInstanceUid, content))
            .Integer(Tag.SeriesNumber, SeriesNumber)
            .Text(Tag.SeriesDate, ObjectHeader.Date(options.Created))
            .Text(Tag.SeriesTime, ObjectHeader.Time(options.Created))
            .Text(Tag.ContentDate, ObjectHeader.Date(options.Created))
            .Text(Tag.ContentTime, ObjectHeader.Time(options.Created))
            .Empty(Tag.ReferencedPerformedProcedureStepSequence)
            .Empty(Tag.PerformedProcedureCodeSequence)
            .Text(Tag.CompletionFlag, partial ? "PARTIAL" : "COMPLETE")
            .Text(Tag.VerificationFlag, "UNVERIFIED")
            .Text(Tag.PreliminaryFlag, "PRELIMINARY")
            .Sequence(Tag.CurrentRequestedProcedureEvidenceSequence, Evidence(source))
            .Sequence(Tag.ContentTemplateSequence, new DatasetBuilder(Encoding.ASCII)
                .Text(Tag.MappingResource, "DCMR").Text(Tag.TemplateIdentifier, "1500").Build())
            .Sequence(Tag.CodingSchemeIdentificationSequence, new DatasetBuilder(encoding)
                .Text(Tag.CodingSchemeDesignator, PrivateCodes.Scheme).Text(Tag.CodingSchemeVersion, PrivateCodes.SchemeVersion)
                .Text(Tag.CodingSchemeName, "ElbowAssist private codes")
                .Text(Tag.CodingSchemeResponsibleOrganization, ObjectHeader.Manufacturer).Build())
            .Sequence(Tag.ContributingEquipmentSequence, ObjectHeader.Equipment(reading.Tool, reading.Models, encoding));
        return DicomFile.Write(builder.Build());
    }

    private static DicomDataset Evidence(DicomSource source) => new DatasetBuilder(Encoding.ASCII)
        .Text(Tag.StudyInstanceUid, source.StudyInstanceUid)
        .Sequence(Tag.ReferencedSeriesSequence, new DatasetBuilder(Encoding.ASCII)
            .Text(Tag.SeriesInstanceUid, source.SeriesInstanceUid)
            .Sequence(Tag.ReferencedSopSequence, ObjectHeader.ImageReference(source))
            .Build())
        .Build();
}
