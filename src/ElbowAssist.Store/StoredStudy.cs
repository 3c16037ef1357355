namespace ElbowAssist.Store;

/// <summary>A study as listed.</summary>
/// <param name="Id">Identifier, made by the store.</param>
/// <param name="Title">Title the reader gave, or a made-up one.</param>
/// <param name="Origin">Where its films come from: <c>films</c>, <c>demo</c>, <c>case</c>, <c>watched</c> or <c>archive</c>.</param>
/// <param name="CreatedAt">When.</param>
/// <param name="Films">Films in the order they were added.</param>
/// <param name="Source">What makes two arrivals one study: the DICOM study, or a digest of a single film; null where none is known.</param>
public sealed record StoredStudy(string Id, string Title, string Origin, DateTimeOffset CreatedAt, IReadOnlyList<StoredFilm> Films, string? Source = null);

/// <summary>A film as listed.</summary>
/// <param name="Id">Identifier within its study.</param>
/// <param name="Name">File name without a folder.</param>
/// <param name="Sha256">SHA-256 of the file, lower-case hex.</param>
/// <param name="Stated">What was said of it when it was added, as a sidecar; or null.</param>
/// <param name="Placements">Landmarks laid beforehand, as COCO keypoints; or null.</param>
public sealed record StoredFilm(string Id, string Name, string Sha256, string? Stated, string? Placements);

/// <summary>The result of one practice film. Private, deletable.</summary>
/// <param name="Number">Counts up.</param>
/// <param name="At">When.</param>
/// <param name="Kind">What was practised, e.g. <c>lines</c>, <c>hand</c>.</param>
/// <param name="Result">The result as JSON.</param>
public sealed record PracticeResult(long Number, DateTimeOffset At, string Kind, string Result);
