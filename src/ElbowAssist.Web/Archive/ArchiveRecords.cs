namespace ElbowAssist.Web.Archive;

/// <summary>Whether there is an archive to ask.</summary>
/// <param name="Named">True if one was named when the service was started.</param>
public sealed record ArchivePage(bool Named);

/// <summary>A study opened from an archive.</summary>
/// <param name="Id">The study here.</param>
/// <param name="Films">Films that the archive holds and the study does not have yet.</param>
public sealed record ArchivedStudy(string Id, IReadOnlyList<ArchivedFilm> Films);

/// <summary>A film in an archive.</summary>
/// <param name="Study">Study instance UID.</param>
/// <param name="Series">Series instance UID.</param>
/// <param name="Instance">SOP instance UID.</param>
public sealed record ArchivedFilm(string? Study, string? Series, string? Instance);
