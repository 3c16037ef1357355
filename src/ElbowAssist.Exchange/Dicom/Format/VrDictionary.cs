using System.Collections.Frozen;

namespace ElbowAssist.Exchange.Dicom.Format;

/// <summary>Value representations of the named attributes, from PS3.6; implicit files and the writer need them.</summary>
internal static class VrDictionary
{
    private static readonly FrozenDictionary<Tag, Vr> Known = new (Vr Vr, Tag[] Tags)[]
    {
        (Vr.UL, [Tag.FileMetaInformationGroupLength, Tag.LinePattern]),
        (Vr.OB, [Tag.FileMetaInformationVersion]),
        (Vr.UI,
        [
            Tag.MediaStorageSopClassUid, Tag.MediaStorageSopInstanceUid, Tag.TransferSyntaxUid,
            Tag.ImplementationClassUid, Tag.SopClassUid, Tag.SopInstanceUid, Tag.ReferencedSopClassUid,
            Tag.ReferencedSopInstanceUid, Tag.DeviceUid, Tag.StudyInstanceUid, Tag.SeriesInstanceUid, Tag.Uid,
        ]),
        (Vr.SH,
        [
            Tag.ImplementationVersionName, Tag.AccessionNumber, Tag.CodeValue, Tag.CodingSchemeDesignator,
            Tag.CodingSchemeVersion, Tag.StudyId,
        ]),
        (Vr.CS,
        [
            Tag.SpecificCharacterSet, Tag.Modality, Tag.PresentationIntentType, Tag.ConversionType,
            Tag.MappingResource, Tag.PatientSex, Tag.BodyPartExamined, Tag.ShutterShape, Tag.ViewPosition,
            Tag.PatientOrientation, Tag.Laterality, Tag.ImageLaterality, Tag.PhotometricInterpretation,
            Tag.BurnedInAnnotation, Tag.PixelIntensityRelationship, Tag.PixelSpacingCalibrationType,
            Tag.VoiLutFunction, Tag.LossyImageCompression, Tag.RelationshipType, Tag.ValueType,
            Tag.ContinuityOfContent, Tag.CompletionFlag, Tag.VerificationFlag, Tag.PreliminaryFlag,
            Tag.TemplateIdentifier, Tag.GraphicLayer, Tag.BoundingBoxAnnotationUnits, Tag.AnchorPointAnnotationUnits,
            Tag.GraphicAnnotationUnits, Tag.BoundingBoxTextHorizontalJustification, Tag.AnchorPointVisibility,
            Tag.GraphicType, Tag.GraphicFilled, Tag.ImageHorizontalFlip, Tag.ContentLabel, Tag.PresentationSizeMode,
            Tag.PresentationLutShape, Tag.ShadowStyle, Tag.LineDashingStyle,
        ]),
        (Vr.DA,
        [
            Tag.StudyDate, Tag.SeriesDate, Tag.AcquisitionDate, Tag.ContentDate, Tag.PatientBirthDate,
            Tag.PresentationCreationDate,
        ]),
        (Vr.TM, [Tag.StudyTime, Tag.SeriesTime, Tag.ContentTime, Tag.PresentationCreationTime]),
        (Vr.DT, [Tag.ReferencedDateTime]),
        (Vr.AS, [Tag.PatientAge]),
        (Vr.LO,
        [
            Tag.Manufacturer, Tag.InstitutionName, Tag.CodeMeaning, Tag.StudyDescription, Tag.SeriesDescription,
            Tag.ManufacturerModelName, Tag.PatientId, Tag.IssuerOfPatientId, Tag.DeviceSerialNumber,
            Tag.SoftwareVersions, Tag.PixelSpacingCalibrationDescription, Tag.RescaleType, Tag.LutExplanation,
            Tag.ModalityLutType, Tag.GraphicLayerDescription, Tag.ContentDescription,
        ]),
        (Vr.PN, [Tag.ReferringPhysicianName, Tag.PatientName, Tag.PersonName, Tag.ContentCreatorName]),
        (Vr.ST, [Tag.CodingSchemeName, Tag.CodingSchemeResponsibleOrganization, Tag.UnformattedTextValue]),
        (Vr.UT, [Tag.TextValue]),
        (Vr.UC, [Tag.LongCodeValue]),
        (Vr.DS,
        [
            Tag.DistanceSourceToDetector, Tag.DistanceSourceToPatient, Tag.EstimatedRadiographicMagnificationFactor,
            Tag.ImagerPixelSpacing, Tag.NominalScannedPixelSpacing, Tag.PixelSpacing, Tag.WindowCenter,
            Tag.WindowWidth, Tag.RescaleIntercept, Tag.RescaleSlope, Tag.NumericValue, Tag.PresentationPixelSpacing,
        ]),
        (Vr.IS,
        [
            Tag.SeriesNumber, Tag.InstanceNumber, Tag.ReferencedFrameNumber, Tag.NumberOfFrames, Tag.PixelAspectRatio,
            Tag.ShutterLeftVerticalEdge, Tag.ShutterRightVerticalEdge, Tag.ShutterUpperHorizontalEdge,
            Tag.ShutterLowerHorizontalEdge, Tag.CenterOfCircularShutter, Tag.RadiusOfCircularShutter,
            Tag.VerticesOfThePolygonalShutter, Tag.GraphicLayerOrder, Tag.PresentationPixelAspectRatio,
        ]),
        (Vr.US,
        [
            Tag.FailureReason, Tag.SamplesPerPixel, Tag.PlanarConfiguration, Tag.Rows, Tag.Columns, Tag.BitsAllocated,
            Tag.BitsStored, Tag.HighBit, Tag.PixelRepresentation, Tag.PixelPaddingValue, Tag.PixelPaddingRangeLimit,
            Tag.LutDescriptor, Tag.GraphicDimensions, Tag.NumberOfGraphicPoints, Tag.ImageRotation,
            Tag.GraphicLayerRecommendedDisplayGrayscaleValue, Tag.GraphicLayerRecommendedDisplayCieLabValue,
            Tag.ShadowColorCieLabValue, Tag.PatternOnColorCieLabValue,
        ]),
        (Vr.SS, [Tag.PixelIntensityRelationshipSign]),
        (Vr.SL, [Tag.DisplayedAreaTopLeftHandCorner, Tag.DisplayedAreaBottomRightHandCorner]),
        (Vr.FL,
        [
            Tag.BoundingBoxTopLeftHandCorner, Tag.BoundingBoxBottomRightHandCorner, Tag.AnchorPoint, Tag.GraphicData,
            Tag.ShadowOffsetX, Tag.ShadowOffsetY, Tag.ShadowOpacity, Tag.LineThickness, Tag.PatternOnOpacity,
        ]),
        (Vr.SQ,
        [
            Tag.CodingSchemeIdentificationSequence, Tag.ReferencedPerformedProcedureStepSequence,
            Tag.ReferencedSeriesSequence, Tag.ReferencedImageSequence, Tag.FailedSopSequence,
            Tag.ReferencedSopSequence, Tag.AnatomicRegionSequence, Tag.ContributingEquipmentSequence,
            Tag.ModalityLutSequence, Tag.VoiLutSequence, Tag.SoftcopyVoiLutSequence, Tag.MeasuredValueSequence,
            Tag.MeasurementUnitsCodeSequence, Tag.ConceptNameCodeSequence, Tag.ConceptCodeSequence,
            Tag.PurposeOfReferenceCodeSequence, Tag.PerformedProcedureCodeSequence,
            Tag.CurrentRequestedProcedureEvidenceSequence, Tag.ContentTemplateSequence, Tag.ContentSequence,
            Tag.ViewCodeSequence, Tag.GraphicAnnotationSequence, Tag.TextObjectSequence, Tag.GraphicObjectSequence,
            Tag.DisplayedAreaSelectionSequence, Tag.GraphicLayerSequence, Tag.LineStyleSequence,
        ]),
        (Vr.OW, [Tag.PixelData, Tag.LutData]),
    }.SelectMany(group => group.Tags.Select(tag => KeyValuePair.Create(tag, group.Vr))).ToFrozenDictionary();

    /// <summary>The representation of an attribute; <see cref="Vr.UN"/> if it has no name here.</summary>
    public static Vr Of(Tag tag) => ((uint)tag & 0xFFFF) == 0 ? Vr.UL : Known.GetValueOrDefault(tag, Vr.UN);
}
