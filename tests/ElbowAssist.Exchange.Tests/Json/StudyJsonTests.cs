using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Testing;
using Json.Schema;

namespace ElbowAssist.Exchange.Tests.Json;

public sealed class StudyJsonTests
{
    private static readonly ToolIdentity Tool = new("ElbowAssist", "0.0.0");

    [Fact]
    public void AStudy_ComesBackByteForByte()
    {
        var written = StudyJson.Write(Sample());
        var again = StudyJson.Write(StudyAssembler.Assemble(StudyJson.Read(written, Tool)));
        Assert.Equal(Encoding.UTF8.GetString(written), Encoding.UTF8.GetString(again));
    }

    // Judge: JsonSchema.Net, draft 2020-12.
    [Fact]
    public void AWrittenStudy_IsValid()
    {
        var together = new BuildOptions { SchemaRegistry = new SchemaRegistry() };
        JsonSchema.FromText(Schemas.Reading, together);
        using var document = JsonDocument.Parse(StudyJson.Write(Sample()));
        var result = JsonSchema.FromText(Schemas.Study, together).Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(result.IsValid, string.Join('\n', result.Details?.Where(d => d.Errors is not null).Select(d => $"{d.InstanceLocation}: {string.Join(' ', d.Errors!.Values)}") ?? []));
    }

    [Fact]
    public void AFileOfMarksAlone_AddsThemToFilmsReadElsewhere()
    {
        var input = StudyJson.Read("""{"schema": "elbowassist/study/1", "injuredSide": "left", "settledSides": {"a.png": "right"}, "marks": {"effusion": "yes", "injuries": ["olecranon"]}}"""u8.ToArray(), Tool);
        Assert.Empty(input.Films);
        Assert.Equal(Side.Left, input.InjuredSide);
        Assert.Equal(Side.Right, input.SettledSides["a.png"]);
        Assert.Equal(Call.Yes, input.Marks.Effusion);
        Assert.Equal([SuspectedInjury.Olecranon], input.Marks.Injuries);
    }

    [Theory]
    [InlineData("""{"schema": "elbowassist/study/2"}""", "elbowassist/study/1")]
    [InlineData("""{"schema": "elbowassist/study/1", "marks": {"effusion": "maybe"}}""", "marks.effusion")]
    [InlineData("""{"schema": "elbowassist/study/1", "marks": {"growthCentres": {"patella": "seen"}}}""", "growth centre")]
    [InlineData("""{"schema": "elbowassist/study/1", "injuredSide": "both"}""", "injuredSide")]
    [InlineData("""{"schema": "elbowassist/study/1", "walk": {"version": "adult", "startedAt": "yesterday"}}""", "walk")]
    [InlineData("""{"schema": "elbowassist/study/1", "walk": {"version": "adult", "startedAt": "2030-01-01T08:00:00Z", "proposalsVisibleFromStart": false, "proposed": [], "moved": [], "decided": [{"question": "growth.trochlea", "choices": ["seen"], "note": null, "at": "2030-01-01T08:00:00Z", "toolWasVisible": false}], "enhanced": [], "settled": [], "concludedAt": null}}""", "growth.trochlea")]
    public void WhatIsNoStudy_IsRefusedInOneSentence(string text, string where)
    {
        var complaint = Assert.Throws<ExchangeFormatException>(() => StudyJson.Read(Encoding.UTF8.GetBytes(text), Tool)).Message;
        Assert.Contains(where, complaint, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', complaint);
    }

    private static Study Sample()
    {
        var keeper = new WalkKeeper(WalkDefinition.ChildWalk, TimeProvider.System);
        var walk = keeper.Begin(proposalsVisibleFromStart: true);
        walk = keeper.Answer(walk, "history.mechanism", [], "fell from a \"swing\"").Record;
        walk = keeper.Answer(walk, "effusion.call", ["yes"]).Record;
        walk = keeper.Answer(walk, "conclusion.injuries", ["supracondylar", "ulnar-shaft"]).Record;
        walk = keeper.Answer(walk, "conclusion.state", ["displaced"]).Record;
        walk = keeper.ShowTool(walk, WalkTopic.Alignment, [new("a.png", "baumann-angle", null, MeasurementState.Withheld)]).Record;
        walk = keeper.Move(walk, "a.png", "ulna.coronoid", null, new(3.5, 4.25)).Record;
        walk = keeper.ShowEnhanced(walk, "effusion.call").Record;
        walk = keeper.Settle(walk, "time-critical.nerves-perfusion", "documented").Record;
        return StudyAssembler.Assemble(new()
        {
            Tool = Tool,
            InjuredSide = Side.Left,
            Films =
            [
                new("a.png", SampleReadings.Lateral(), [new("metadata", Side.Left), new("reader", Side.Left)]),
                new("b.png", SampleReadings.Ap(), []),
                new("c.png", SampleReadings.Refused(), []),
            ],
            Marks = new() { GrowthCentres = ImmutableSortedDictionary<GrowthCentre, CentreMark>.Empty.Add(GrowthCentre.Trochlea, CentreMark.Seen) },
            Walk = walk,
        });
    }
}
