using System.Collections.Immutable;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;
using ElbowAssist.Geometry;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Reading.Tests.Walks;

public sealed class WalkKeeperTests
{
    private readonly FixedClock clock = new();
    private readonly WalkKeeper keeper;

    public WalkKeeperTests() => keeper = new WalkKeeper(WalkDefinition.ChildWalk, clock);

    [Fact]
    public void TheToolIsShown_OnlyAfterTheReadersOwnAnswers()
    {
        var walk = keeper.Begin(proposalsVisibleFromStart: false);
        var refused = keeper.ShowTool(walk, WalkTopic.Effusion, []);
        Assert.Equal("walk.own-answer-first", refused.Refusal!.Code);
        Assert.Same(walk, refused.Record);

        walk = Answer(walk, "effusion.anterior", "lifted");
        walk = Answer(walk, "effusion.posterior", "seen");
        Assert.NotNull(keeper.ShowTool(walk, WalkTopic.Effusion, []).Refusal);
        walk = Answer(walk, "effusion.call", "yes");
        Assert.Null(keeper.ShowTool(walk, WalkTopic.Effusion, []).Refusal);
    }

    [Fact]
    public void TheFirstAnswer_IsKeptWhenTheReaderChangesIt()
    {
        var walk = keeper.Begin(false);
        walk = Answer(walk, "effusion.anterior", "flat");
        walk = Answer(walk, "effusion.posterior", "not-seen");
        walk = Answer(walk, "effusion.call", "no");
        clock.Pass(30);
        walk = keeper.ShowTool(walk, WalkTopic.Effusion, []).Record;
        clock.Pass(30);
        walk = Answer(walk, "effusion.call", "yes");

        Assert.Equal("no", Assert.Single(walk.FirstAnswer("effusion.call")!.Choices));
        Assert.False(walk.FirstAnswer("effusion.call")!.ToolWasVisible);
        Assert.Equal("yes", Assert.Single(walk.StandingAnswer("effusion.call")!.Choices));
        Assert.True(walk.StandingAnswer("effusion.call")!.ToolWasVisible);
        Assert.Equal(60, (walk.StandingAnswer("effusion.call")!.At - walk.FirstAnswer("effusion.call")!.At).TotalSeconds);
    }

    [Fact]
    public void ProposalsFromTheStart_AreRecordedAsSuch()
    {
        var walk = keeper.Begin(proposalsVisibleFromStart: true);
        Assert.Null(keeper.ShowTool(walk, WalkTopic.Alignment, []).Refusal);
        Assert.True(Answer(walk, "effusion.call", "no").StandingAnswer("effusion.call")!.ToolWasVisible);
    }

    [Fact]
    public void ProposedMovedAndDecided_LieApart()
    {
        var walk = keeper.Begin(true);
        walk = keeper.ShowTool(walk, WalkTopic.Alignment, [new("a", "baumann-angle", 72, MeasurementState.Measured)]).Record;
        walk = keeper.Move(walk, "a", "ulna.coronoid", new Point(1, 2), new Point(3, 4)).Record;
        walk = Answer(walk, "alignment.ulnohumeral", "yes");
        Assert.Equal(72, Assert.Single(Assert.Single(walk.Proposed).Values).Value);
        Assert.Equal(new Point(3, 4), Assert.Single(walk.Moved).To);
        Assert.Equal("alignment.ulnohumeral", Assert.Single(walk.Decided).ItemId);
    }

    [Fact]
    public void EnhancedCrop_ComesAfterTheCallOnTheOriginal()
    {
        var walk = keeper.Begin(false);
        Assert.Equal("walk.own-answer-first", keeper.ShowEnhanced(walk, "cortex.radial-head").Refusal!.Code);
        walk = Answer(walk, "cortex.radial-head", "cannot-trace");
        Assert.Single(keeper.ShowEnhanced(walk, "cortex.radial-head").Record.Enhanced);
    }

    [Theory]
    [InlineData("cortex.nowhere", "traced-intact", "walk.unknown-question")]
    [InlineData("cortex.radial-head", "fine", "walk.unknown-answer")]
    public void WhatDoesNotFit_IsRefusedWithASentence(string item, string choice, string code)
    {
        var refusal = keeper.Answer(keeper.Begin(false), item, [choice]).Refusal!;
        Assert.Equal(code, refusal.Code);
        Assert.EndsWith(".", refusal.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void OneAnswerQuestions_TakeExactlyOne()
    {
        Assert.Equal("walk.one-answer", keeper.Answer(keeper.Begin(false), "effusion.call", ["yes", "no"]).Refusal!.Code);
        Assert.Equal("walk.no-answer", keeper.Answer(keeper.Begin(false), "effusion.call", []).Refusal!.Code);
        Assert.Null(keeper.Answer(keeper.Begin(false), "conclusion.injuries", []).Refusal);
        Assert.Null(keeper.Answer(keeper.Begin(false), "history.mechanism", [], "fell from a swing").Refusal);
    }

    [Fact]
    public void AClosedRead_TakesNothingMore()
    {
        var walk = keeper.Begin(false);
        Assert.Equal("walk.no-conclusion", keeper.Conclude(walk).Refusal!.Code);
        walk = keeper.Conclude(Answer(walk, "conclusion.outcome", "fracture-suspected")).Record;
        Assert.Equal(clock.Now, walk.ConcludedAt);
        Assert.Equal("walk.closed", keeper.Answer(walk, "effusion.call", ["yes"]).Refusal!.Code);
        Assert.Equal("walk.closed", keeper.Settle(walk, "any").Refusal!.Code);
    }

    [Fact]
    public void Marks_AreTheReadersStandingAnswers()
    {
        var walk = keeper.Begin(true);
        walk = Answer(walk, "history.trauma", "yes");
        walk = Answer(walk, "effusion.call", "no");
        walk = Answer(walk, "effusion.call", "yes");
        walk = Answer(walk, "growth.trochlea", "seen");
        walk = Answer(walk, "growth.olecranon", "not-checked");
        walk = Answer(walk, "conclusion.injuries", "supracondylar", "ulnar-shaft");
        walk = Answer(walk, "conclusion.state", "displaced");
        var marks = WalkMarks.Of(walk);
        Assert.Equal(Call.Yes, marks.Trauma);
        Assert.Equal(Call.Yes, marks.Effusion);
        Assert.Equal(CentreMark.Seen, Assert.Single(marks.GrowthCentres).Value);
        Assert.Equal([SuspectedInjury.Supracondylar, SuspectedInjury.UlnarShaft], marks.Injuries);
        Assert.True(marks.Displaced);
        Assert.False(marks.Open);
    }

    private WalkRecord Answer(WalkRecord walk, string item, params string[] choices)
    {
        var outcome = keeper.Answer(walk, item, [.. choices]);
        Assert.Null(outcome.Refusal);
        return outcome.Record;
    }
}
