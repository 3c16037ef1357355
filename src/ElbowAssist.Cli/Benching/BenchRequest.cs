namespace ElbowAssist.Cli.Benching;

/// <summary>What <c>bench</c> was asked to do.</summary>
/// <param name="Films">Films with truth, or pictures without an elbow with theirs, or null.</param>
/// <param name="Readings">Their readings, or null.</param>
/// <param name="Proposals">Proposals on them, or null.</param>
/// <param name="Tables">Folder for tables, or null.</param>
/// <param name="NotElbows">Readings of pictures without an elbow, or proposals on them, or null.</param>
internal sealed record BenchRequest(
    DirectoryInfo? Films, DirectoryInfo? Readings, DirectoryInfo? Proposals, DirectoryInfo? Tables, DirectoryInfo? NotElbows)
{
    /// <summary>Whether films of elbows are to be scored; else <see cref="Films"/> holds what <see cref="NotElbows"/> were made of.</summary>
    public bool ScoresElbows => Readings is not null || Proposals is not null;

    /// <summary>Folders that must exist.</summary>
    public IEnumerable<DirectoryInfo> Needed => new[] { Films, Readings, Proposals, NotElbows }.OfType<DirectoryInfo>();
}
