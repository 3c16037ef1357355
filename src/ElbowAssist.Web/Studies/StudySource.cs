namespace ElbowAssist.Web.Studies;

/// <summary>What makes two arrivals one study.</summary>
internal static class StudySource
{
    /// <summary>Films of one DICOM study belong together, however they come.</summary>
    public static string Dicom(string studyInstanceUid) => "dicom:" + studyInstanceUid;

    /// <summary>Any other film is a study of its own.</summary>
    public static string File(byte[] sha256) => "file:" + Convert.ToHexStringLower(sha256);
}
