using System.Collections.Immutable;
using ElbowAssist.Geometry;

namespace ElbowAssist.Reading.Walks;

/// <summary>An answer of the reader. Answers are added, never replaced.</summary>
/// <param name="ItemId">The question.</param>
/// <param name="Choices">Codes of the choices taken.</param>
/// <param name="Note">Free words, or null.</param>
/// <param name="At">When.</param>
/// <param name="ToolWasVisible">Whether the tool's proposals on this topic were on view when it was given.</param>
public sealed record WalkAnswer(string ItemId, ImmutableArray<string> Choices, string? Note, DateTimeOffset At, bool ToolWasVisible);

/// <summary>A value of the tool as it stood when it was shown.</summary>
/// <param name="FilmId">Film.</param>
/// <param name="Name">Measurement name.</param>
/// <param name="Value">Value, or null if withheld.</param>
/// <param name="State">State.</param>
public sealed record ProposedValue(string FilmId, string Name, double? Value, MeasurementState State);

/// <summary>The moment the tool's proposals on a topic came into view.</summary>
/// <param name="Topic">Topic.</param>
/// <param name="Values">What was shown.</param>
/// <param name="At">When.</param>
public sealed record ToolShown(WalkTopic Topic, ImmutableArray<ProposedValue> Values, DateTimeOffset At);

/// <summary>A landmark the reader moved or placed.</summary>
/// <param name="FilmId">Film.</param>
/// <param name="Landmark">Landmark name.</param>
/// <param name="From">Where it was, pixels of the original image; null if newly placed.</param>
/// <param name="To">Where it is now.</param>
/// <param name="At">When.</param>
public sealed record LandmarkMove(string FilmId, string Landmark, Point? From, Point To, DateTimeOffset At);

/// <summary>An enhanced crop the reader opened.</summary>
public sealed record EnhancedShown(string ItemId, DateTimeOffset At);

/// <summary>A prompt the reader has dealt with.</summary>
/// <param name="Code">Prompt code.</param>
/// <param name="Note">What was done, or null.</param>
/// <param name="At">When.</param>
public sealed record PromptSettled(string Code, string? Note, DateTimeOffset At);

/// <summary>
/// Everything that happened on a walk. What the tool proposed, what the reader moved and what the reader decided lie in
/// lists of their own.
/// </summary>
public sealed record WalkRecord
{
    /// <summary>Adult or child.</summary>
    public required WalkVersion Version { get; init; }

    /// <summary>When it began.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Whether the tool's proposals were on view from the start.</summary>
    public required bool ProposalsVisibleFromStart { get; init; }

    /// <summary>What the tool proposed, when shown.</summary>
    public ImmutableList<ToolShown> Proposed { get; init; } = [];

    /// <summary>What the reader moved.</summary>
    public ImmutableList<LandmarkMove> Moved { get; init; } = [];

    /// <summary>What the reader decided.</summary>
    public ImmutableList<WalkAnswer> Decided { get; init; } = [];

    /// <summary>Enhanced crops opened.</summary>
    public ImmutableList<EnhancedShown> Enhanced { get; init; } = [];

    /// <summary>Prompts settled.</summary>
    public ImmutableList<PromptSettled> Settled { get; init; } = [];

    /// <summary>When the reader closed the read, or null.</summary>
    public DateTimeOffset? ConcludedAt { get; init; }

    /// <summary>The reader's own answer, before the tool's was shown, or null.</summary>
    public WalkAnswer? FirstAnswer(string itemId) => Decided.Find(a => a.ItemId == itemId);

    /// <summary>The answer that stands.</summary>
    public WalkAnswer? StandingAnswer(string itemId) => Decided.FindLast(a => a.ItemId == itemId);

    /// <summary>Whether the tool's proposals on a topic have been on view.</summary>
    public bool ToolVisible(WalkTopic topic) => ProposalsVisibleFromStart || Proposed.Exists(p => p.Topic == topic);
}
