namespace ElbowAssist.Exchange.Dicom.Reports;

/// <summary>Which structured report is written.</summary>
public enum ReportKind
{
    /// <summary>Comprehensive 3D SR, what IHE AI Results names; the tree needs nothing three-dimensional.</summary>
    Comprehensive3D,

    /// <summary>Comprehensive SR, for archives that know no other.</summary>
    Comprehensive,
}

/// <summary>How a report is written.</summary>
/// <param name="Created">When the reading was made.</param>
/// <param name="Kind">SOP class.</param>
/// <param name="Reader">Name of the person who laid landmarks, as DICOM writes names, or null if nobody did or the name is not to be told.</param>
public sealed record ReportOptions(DateTimeOffset Created, ReportKind Kind = ReportKind.Comprehensive3D, string? Reader = null);
