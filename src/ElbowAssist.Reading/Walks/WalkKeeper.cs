using System.Collections.Immutable;
using ElbowAssist.Geometry;

namespace ElbowAssist.Reading.Walks;

/// <summary>The record after an attempt, and why nothing was added if so.</summary>
/// <param name="Record">The record; unchanged where refused.</param>
/// <param name="Refusal">Null if it was taken.</param>
public readonly record struct WalkOutcome(WalkRecord Record, Reason? Refusal);

/// <summary>Keeps the order of a walk: the reader's own answer first, then the tool's; nothing is replaced or taken back.</summary>
public sealed class WalkKeeper(WalkDefinition definition, TimeProvider clock)
{
    /// <summary>The walk being kept.</summary>
    public WalkDefinition Definition => definition;

    /// <summary>An empty record.</summary>
    public WalkRecord Begin(bool proposalsVisibleFromStart) => new()
    {
        Version = definition.Version,
        StartedAt = clock.GetUtcNow(),
        ProposalsVisibleFromStart = proposalsVisibleFromStart,
    };

    /// <summary>Adds an answer. The reader may answer again; the earlier answer stays.</summary>
    public WalkOutcome Answer(WalkRecord record, string itemId, ImmutableArray<string> choices, string? note = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (Closed(record) is { } closed)
        {
            return closed;
        }

        if (definition.Find(itemId) is not { } item)
        {
            return Refuse(record, "walk.unknown-question", $"There is no question \"{itemId}\" in this walk.");
        }

        if (choices.FirstOrDefault(c => item.Choices.All(k => k.Code != c)) is { } unknown)
        {
            return Refuse(record, "walk.unknown-answer", $"\"{unknown}\" is no answer to \"{item.Question}\".");
        }

        if (!item.AllowsSeveral && choices.Length > 1)
        {
            return Refuse(record, "walk.one-answer", $"\"{item.Question}\" takes one answer.");
        }

        if (item is { Choices.Count: > 0, AllowsSeveral: false } && choices.Length == 0)
        {
            return Refuse(record, "walk.no-answer", $"\"{item.Question}\" needs an answer.");
        }

        var answer = new WalkAnswer(itemId, choices, note, clock.GetUtcNow(), record.ToolVisible(TopicOf(itemId)));
        return new(record with { Decided = record.Decided.Add(answer) }, null);
    }

    /// <summary>Shows the tool's proposals on a topic: only once every question of it that has choices has the reader's own answer.</summary>
    public WalkOutcome ShowTool(WalkRecord record, WalkTopic topic, ImmutableArray<ProposedValue> values)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (Closed(record) is { } closed)
        {
            return closed;
        }

        var step = definition.Steps.FirstOrDefault(s => s.Topic == topic);
        var open = step?.Items.FirstOrDefault(i => i.Choices.Count > 0 && record.FirstAnswer(i.Id) is null);
        return open is not null && !record.ProposalsVisibleFromStart
            ? Refuse(record, "walk.own-answer-first", $"Answer \"{open.Question}\" before the proposals are shown.")
            : new(record with { Proposed = record.Proposed.Add(new(topic, values, clock.GetUtcNow())) }, null);
    }

    /// <summary>Opens the enhanced crop of a question: only after the reader's own call on the original.</summary>
    public WalkOutcome ShowEnhanced(WalkRecord record, string itemId)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (Closed(record) is { } closed)
        {
            return closed;
        }

        return record.FirstAnswer(itemId) is null
            ? Refuse(record, "walk.own-answer-first", "Make your own call on the original before the enhanced crop is shown.")
            : new(record with { Enhanced = record.Enhanced.Add(new(itemId, clock.GetUtcNow())) }, null);
    }

    /// <summary>Records a landmark moved or placed.</summary>
    public WalkOutcome Move(WalkRecord record, string filmId, string landmark, Point? from, Point to)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Closed(record) ?? (to.IsFinite
            ? new(record with { Moved = record.Moved.Add(new(filmId, landmark, from, to, clock.GetUtcNow())) }, null)
            : Refuse(record, "walk.no-place", "A landmark needs a place on the film."));
    }

    /// <summary>Records that a prompt was dealt with, which makes room for the next.</summary>
    public WalkOutcome Settle(WalkRecord record, string promptCode, string? note = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Closed(record) ??
            new WalkOutcome(record with { Settled = record.Settled.Add(new(promptCode, note, clock.GetUtcNow())) }, null);
    }

    /// <summary>Closes the read once the conclusion has been answered.</summary>
    public WalkOutcome Conclude(WalkRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        return Closed(record) ?? (record.FirstAnswer("conclusion.outcome") is null
            ? Refuse(record, "walk.no-conclusion", "Answer \"Conclusion\" before the read is closed.")
            : new(record with { ConcludedAt = clock.GetUtcNow() }, null));
    }

    private WalkTopic TopicOf(string itemId) => definition.Steps.First(s => s.Items.Any(i => i.Id == itemId)).Topic;

    private static WalkOutcome? Closed(WalkRecord record) => record.ConcludedAt is null
        ? null
        : Refuse(record, "walk.closed", "The read is closed; begin another to add to it.");

    private static WalkOutcome Refuse(WalkRecord record, string code, string text) => new(record, new Reason(code, text));
}
