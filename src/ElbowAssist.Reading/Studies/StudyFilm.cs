using ElbowAssist.Anatomy;

namespace ElbowAssist.Reading.Studies;

/// <summary>What one source says of the side of a film.</summary>
/// <param name="Source"><c>metadata</c>, <c>sidecar</c>, <c>option</c> or <c>reader</c>.</param>
/// <param name="Side">The side it states.</param>
public sealed record SideStatement(string Source, Side Side)
{
    /// <summary>The source whose word settles a contradiction.</summary>
    public const string Reader = "reader";
}

/// <summary>One film of a study.</summary>
/// <param name="Id">Identifier within the study, e.g. the file name.</param>
/// <param name="Reading">Its reading.</param>
/// <param name="SideStatements">Every statement of its side that was met; may be empty.</param>
public sealed record StudyFilm(string Id, FilmReading Reading, IReadOnlyList<SideStatement> SideStatements)
{
    /// <summary>The reader's word, else the side all sources agree on, else unknown.</summary>
    public Side Side => SideStatements.LastOrDefault(s => s.Source == SideStatement.Reader) is { } reader
        ? reader.Side
        : KnownSides() switch
        {
            [] => Reading.Side,
            [var only] => only,
            _ => Side.Unknown,
        };

    /// <summary>True if sources contradict each other and the reader has not settled it.</summary>
    public bool SideIsContradicted =>
        KnownSides().Length > 1 && SideStatements.All(s => s.Source != SideStatement.Reader);

    /// <summary>The view the measurements were taken on.</summary>
    public View View => Reading.View.Name;

    /// <summary>Why the film was taken.</summary>
    public FilmContext Context => Reading.Context;

    internal Measurement? Measured(string name) =>
        Reading.Measurements.FirstOrDefault(m => m.Name == name && m is { Value: not null, Redraw95: not null });

    private Side[] KnownSides() =>
        [.. SideStatements.Select(s => s.Side).Append(Reading.Side).Where(s => s != Side.Unknown).Distinct()];
}
