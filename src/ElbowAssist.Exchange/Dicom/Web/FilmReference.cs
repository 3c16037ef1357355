namespace ElbowAssist.Exchange.Dicom.Web;

/// <summary>A film in an archive.</summary>
/// <param name="StudyInstanceUid">Study.</param>
/// <param name="SeriesInstanceUid">Series.</param>
/// <param name="SopClassUid">SOP class.</param>
/// <param name="SopInstanceUid">Instance.</param>
/// <param name="BodyPart">Body part as the archive states it, or null.</param>
public sealed record FilmReference(
    string StudyInstanceUid, string SeriesInstanceUid, string SopClassUid, string SopInstanceUid, string? BodyPart);

/// <summary>Which films to look for. Films of other stated body parts are left out; films that state none are kept.</summary>
public sealed record FilmQuery
{
    /// <summary>A single study, or null for all.</summary>
    public string? StudyInstanceUid { get; init; }

    /// <summary>Number of the request it answers, or null for all.</summary>
    public string? AccessionNumber { get; init; }

    /// <summary>First study date, or null.</summary>
    public DateOnly? From { get; init; }

    /// <summary>Last study date, or null.</summary>
    public DateOnly? To { get; init; }
}

/// <summary>What became of an object that was to be stored.</summary>
public enum StoreState
{
    /// <summary>Stored now.</summary>
    Stored,

    /// <summary>It was there already and was not sent again.</summary>
    AlreadyThere,

    /// <summary>The archive did not take it.</summary>
    Failed,
}

/// <summary>The outcome for one object.</summary>
/// <param name="SopInstanceUid">The object.</param>
/// <param name="State">What became of it.</param>
/// <param name="Sentence">Why it failed, in a sentence without identifiers; null if it did not.</param>
public sealed record StoreOutcome(string SopInstanceUid, StoreState State, string? Sentence);
