using ElbowAssist.Anatomy;

namespace ElbowAssist.Exchange.Dicom.Codes;

/// <summary>Codes of DICOM PS3.16 annex D, SNOMED CT as PS3.16 lists it, UMLS, UCUM and language tags.</summary>
internal static class StandardCodes
{
    public static readonly Code ImagingMeasurementReport = Dcm("126000", "Imaging Measurement Report");
    public static readonly Code Language = Dcm("121049", "Language of Content Item and Descendants");
    public static readonly Code English = new("en", "RFC5646", "English");
    public static readonly Code CountryOfLanguage = Dcm("121046", "Country of Language");
    public static readonly Code UnitedStates = new("US", "ISO3166_1", "United States");
    public static readonly Code ObserverType = Dcm("121005", "Observer Type");
    public static readonly Code Person = Dcm("121006", "Person");
    public static readonly Code Device = Dcm("121007", "Device");
    public static readonly Code PersonObserverName = Dcm("121008", "Person Observer Name");
    public static readonly Code DeviceObserverUid = Dcm("121012", "Device Observer UID");
    public static readonly Code DeviceObserverName = Dcm("121013", "Device Observer Name");
    public static readonly Code DeviceObserverManufacturer = Dcm("121014", "Device Observer Manufacturer");
    public static readonly Code DeviceObserverModelName = Dcm("121015", "Device Observer Model Name");
    public static readonly Code ProcedureReported = Dcm("121058", "Procedure reported");
    public static readonly Code ImagingProcedure = Sct("363679005", "Imaging procedure");
    public static readonly Code ImageLibrary = Dcm("111028", "Image Library");
    public static readonly Code ImageLibraryGroup = Dcm("126200", "Image Library Group");
    public static readonly Code Modality = Dcm("121139", "Modality");
    public static readonly Code TargetRegion = Dcm("123014", "Target Region");
    public static readonly Code ImageLaterality = Dcm("111027", "Image Laterality");
    public static readonly Code ImageView = Dcm("111031", "Image View");
    public static readonly Code HorizontalPixelSpacing = Dcm("111026", "Horizontal Pixel Spacing");
    public static readonly Code VerticalPixelSpacing = Dcm("111066", "Vertical Pixel Spacing");
    public static readonly Code ImagingMeasurements = Dcm("126010", "Imaging Measurements");
    public static readonly Code MeasurementGroup = Dcm("125007", "Measurement Group");
    public static readonly Code TrackingIdentifier = Dcm("112039", "Tracking Identifier");
    public static readonly Code TrackingUniqueIdentifier = Dcm("112040", "Tracking Unique Identifier");
    public static readonly Code Finding = Dcm("121071", "Finding");
    public static readonly Code MeasurementMethod = Sct("370129005", "Measurement Method");
    public static readonly Code FindingSite = Sct("363698007", "Finding Site");
    public static readonly Code Laterality = Sct("272741003", "Laterality");
    public static readonly Code AlgorithmName = Dcm("111001", "Algorithm Name");
    public static readonly Code AlgorithmVersion = Dcm("111003", "Algorithm Version");
    public static readonly Code CertaintyOfFeature = Dcm("111011", "Certainty of Feature");
    public static readonly Code UpperUncertainty = Sct("371886008", "+, range of upper measurement uncertainty");
    public static readonly Code LowerUncertainty = Sct("371885007", "-, range of lower measurement uncertainty");
    public static readonly Code Comment = Dcm("121106", "Comment");
    public static readonly Code QualitativeEvaluations = new("C0034375", "UMLS", "Qualitative Evaluations");
    public static readonly Code ImageQuality = Dcm("111101", "Image Quality");
    public static readonly Code Unusable = Dcm("111235", "Unusable - Quality renders image unusable");
    public static readonly Code NoAlgorithmsSucceeded = Dcm("111245", "No algorithms succeeded; without findings");
    public static readonly Code Undetermined = Sct("373068000", "Undetermined");
    public static readonly Code ProcessingEquipment = Dcm("109102", "Processing Equipment");
    public static readonly Code ElbowJoint = Sct("16953009", "Elbow joint");
    public static readonly Code DistalHumerus = Sct("118495001", "Distal Humerus");
    public static readonly Code ProximalRadius = Sct("12881000", "Proximal Radius");
    public static readonly Code ProximalUlna = Sct("34318004", "Proximal Ulna");

    public static Code? Of(Side side) => side switch
    {
        Side.Left => Sct("7771000", "Left"),
        Side.Right => Sct("24028007", "Right"),
        _ => null,
    };

    public static Code? Of(View view) => view switch
    {
        View.Lateral => Sct("399067008", "lateral"),
        View.Ap => Sct("399348003", "antero-posterior"),
        View.Oblique => Sct("399182000", "oblique"),
        _ => null,
    };

    /// <summary>Modality of an image, CID 29; null where this project has no code for it.</summary>
    public static Code? OfModality(string? modality) => modality switch
    {
        "CR" => Dcm("CR", "Computed Radiography"),
        "DX" => Dcm("DX", "Digital Radiography"),
        _ => null,
    };

    /// <summary>A unit of a measurement as UCUM writes it.</summary>
    public static Code Unit(string unit) => unit switch
    {
        "deg" => new("deg", "UCUM", "deg"),
        "mm" => new("mm", "UCUM", "mm"),
        "%" => new("%", "UCUM", "percent"),
        "px" => new("{pixels}", "UCUM", "pixels"),
        "1" => new("{ratio}", "UCUM", "ratio"),
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "A unit this project does not use."),
    };

    private static Code Dcm(string value, string meaning) => new(value, "DCM", meaning);

    private static Code Sct(string value, string meaning) => new(value, "SCT", meaning);
}
