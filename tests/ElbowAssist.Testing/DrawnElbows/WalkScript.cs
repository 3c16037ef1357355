using System.Collections.Immutable;
using ElbowAssist.Reading.Walks;
using Xunit;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>Plays a reader who answers a walk, half a minute to a question.</summary>
public sealed class WalkScript
{
    private readonly SteppingClock clock = new();
    private readonly WalkKeeper keeper;

    /// <summary>Begins a walk.</summary>
    public WalkScript(WalkDefinition definition, bool proposalsVisibleFromStart = false)
    {
        keeper = new WalkKeeper(definition, clock);
        Record = keeper.Begin(proposalsVisibleFromStart);
    }

    /// <summary>The record so far.</summary>
    public WalkRecord Record { get; private set; }

    /// <summary>Answers a question.</summary>
    public WalkScript Answer(string itemId, params ImmutableArray<string> choices) => Take(keeper.Answer(Record, itemId, choices));

    /// <summary>Answers a question with a note.</summary>
    public WalkScript Note(string itemId, string note) => Take(keeper.Answer(Record, itemId, [], note));

    /// <summary>Answers every question of a topic that is still open with its first choice.</summary>
    public WalkScript Rest(WalkTopic topic)
    {
        foreach (var item in keeper.Definition.Steps.First(s => s.Topic == topic).Items.Where(i => i.Choices.Count > 0 && Record.FirstAnswer(i.Id) is null))
        {
            Answer(item.Id, item.AllowsSeveral ? [] : [item.Choices[0].Code]);
        }

        return this;
    }

    /// <summary>Shows the tool's proposals on a topic.</summary>
    public WalkScript Show(WalkTopic topic, params ImmutableArray<ProposedValue> values) => Take(keeper.ShowTool(Record, topic, values));

    /// <summary>Settles a prompt.</summary>
    public WalkScript Settle(string code, string note) => Take(keeper.Settle(Record, code, note));

    /// <summary>Closes the read.</summary>
    public WalkScript Conclude() => Take(keeper.Conclude(Record));

    private WalkScript Take(WalkOutcome outcome)
    {
        Assert.Null(outcome.Refusal);
        Record = outcome.Record;
        clock.Step();
        return this;
    }

    private sealed class SteppingClock : TimeProvider
    {
        private DateTimeOffset now = new(2030, 3, 4, 9, 30, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => now;

        public void Step() => now = now.AddSeconds(11);
    }
}
