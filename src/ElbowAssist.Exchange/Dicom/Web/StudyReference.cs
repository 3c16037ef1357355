namespace ElbowAssist.Exchange.Dicom.Web;

/// <summary>A study in an archive, told apart by what the archive says of it; nobody's name is asked for.</summary>
/// <param name="StudyInstanceUid">Study.</param>
/// <param name="Date">Study date, or null.</param>
/// <param name="Time">Study time, or null.</param>
/// <param name="AccessionNumber">Number of the request it answers, or null.</param>
/// <param name="Description">What was asked for, or null.</param>
public sealed record StudyReference(string StudyInstanceUid, DateOnly? Date, TimeOnly? Time, string? AccessionNumber, string? Description);
