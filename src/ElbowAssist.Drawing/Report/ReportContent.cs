namespace ElbowAssist.Drawing.Report;

/// <summary>A measurement on one film.</summary>
/// <param name="Value">Value with redraw interval and zones, or null if withheld.</param>
/// <param name="State">State in words.</param>
/// <param name="Reasons">Sentences, where there is a reason.</param>
internal sealed record MeasurementCell(string? Value, string State, IReadOnlyList<string> Reasons);

/// <summary>A measurement on all films of a view.</summary>
/// <param name="Title">Name in words.</param>
/// <param name="Cells">One for each film.</param>
/// <param name="Differences">Between sides and between times.</param>
/// <param name="References">Published ranges with their source numbers.</param>
internal sealed record MeasurementRow(
    string Title, IReadOnlyList<MeasurementCell> Cells, IReadOnlyList<string> Differences, IReadOnlyList<string> References);

/// <summary>All measurements of a view.</summary>
/// <param name="Title">The view.</param>
/// <param name="Films">Titles of the films, in the order of the cells.</param>
/// <param name="Rows">Measurements that at least one film carries.</param>
internal sealed record MeasurementTable(string Title, IReadOnlyList<string> Films, IReadOnlyList<MeasurementRow> Rows);

/// <summary>One film.</summary>
/// <param name="Id">Identifier within the study.</param>
/// <param name="Title">Side, view and occasion.</param>
/// <param name="Facts">File, spacing, who laid the landmarks.</param>
/// <param name="Carries">What it can carry, in words.</param>
/// <param name="CannotCarry">What it cannot carry, with the reasons.</param>
/// <param name="Refused">True if nothing was read.</param>
internal sealed record FilmContent(
    string Id, string Title, string Facts, IReadOnlyList<string> Carries, IReadOnlyList<string> CannotCarry, bool Refused);

/// <summary>One answer of the reader.</summary>
/// <param name="Question">Question.</param>
/// <param name="Answer">The answer that stands.</param>
/// <param name="Earlier">The reader's own first answer, if it was another.</param>
/// <param name="ToolWasVisible">Whether the tool's proposals were on view by then.</param>
internal sealed record AnswerContent(string Question, string Answer, string? Earlier, bool ToolWasVisible);

/// <summary>Answers of a step.</summary>
/// <param name="Title">Heading.</param>
/// <param name="At">Time of the last answer.</param>
/// <param name="Answers">Answers in order.</param>
internal sealed record StepContent(string Title, string At, IReadOnlyList<AnswerContent> Answers);

/// <summary>A prompt.</summary>
internal sealed record PromptContent(string Text, string Sources, string Films);

/// <summary>Everything a report says, before it takes the form of a page or of dictation.</summary>
internal sealed record ReportContent
{
    public required string Heading { get; init; }

    public required IReadOnlyList<string> Facts { get; init; }

    public required string Caution { get; init; }

    public required IReadOnlyList<string> WalkFacts { get; init; }

    public required IReadOnlyList<StepContent> Steps { get; init; }

    public required IReadOnlyList<FilmContent> Films { get; init; }

    public required IReadOnlyList<MeasurementTable> Measurements { get; init; }

    public required IReadOnlyList<string> Together { get; init; }

    public required IReadOnlyList<PromptContent> Prompts { get; init; }

    public required string? MorePrompts { get; init; }

    public required IReadOnlyList<string> NotJudged { get; init; }

    public required IReadOnlyList<string> Method { get; init; }

    public required IReadOnlyList<string> Constructions { get; init; }

    public required IReadOnlyList<string> Sources { get; init; }
}
