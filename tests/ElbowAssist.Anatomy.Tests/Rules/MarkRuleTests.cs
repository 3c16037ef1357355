using ElbowAssist.Anatomy.Rules;
using static ElbowAssist.Anatomy.Tests.Rules.Case;

namespace ElbowAssist.Anatomy.Tests.Rules;

/// <summary>Effusion, associated injuries and time-critical reminders fire on what the reader marked.</summary>
public sealed class MarkRuleTests
{
    [Fact]
    public void NoMarks_NoPrompts() => Assert.Empty(Marked(Boy(8), ReaderMarks.None));

    [Theory]
    [InlineData(Call.No)]
    [InlineData(Call.NotMade)]
    [InlineData(Call.CannotTell)]
    public void Effusion_SpeaksOnlyWhenSeen(Call call) =>
        Assert.Empty(Marked(Boy(8), new() { Effusion = call }));

    [Fact]
    public void Effusion_InAChild_NamesPlacesInOrder()
    {
        var text = Marked(Boy(8), new() { Effusion = Call.Yes, Trauma = Call.Yes }).Of("effusion.second-look")!.Text;
        var places = new[] { "supracondylar", "ulna", "radial head", "lateral condyle" }.Select(p => text.IndexOf(p, StringComparison.Ordinal)).ToList();
        Assert.All(places, p => Assert.True(p >= 0));
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void Effusion_InAnAdult_StartsAtTheRadialHead()
    {
        var text = Marked(Boy(40), new() { Effusion = Call.Yes }).Of("effusion.second-look")!.Text;
        Assert.Contains("75 % of 20", text, StringComparison.Ordinal);
        Assert.Contains("6 of 6", text, StringComparison.Ordinal);
        Assert.DoesNotContain("supracondylar", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Effusion_AgeUnknown_ShowsBothTables()
    {
        var text = Marked(Patient.Unknown, new() { Effusion = Call.Yes }).Of("effusion.second-look")!.Text;
        Assert.Contains("In children", text, StringComparison.Ordinal);
        Assert.Contains("In adults", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Effusion_WithoutTrauma_PutsInfectionFirst()
    {
        var prompts = Marked(Boy(8), new() { Effusion = Call.Yes, Trauma = Call.No });
        Assert.Equal("effusion.without-trauma", prompts[0].Code);
        Assert.Equal(Urgency.TimeCritical, prompts[0].Urgency);
        Assert.Null(prompts.Of("effusion.second-look"));
    }

    [Fact]
    public void Displaced_BringsNervesPulseAndCompartment()
    {
        var prompts = Marked(Boy(6), new() { Displaced = true, Injuries = [SuspectedInjury.Supracondylar] });
        var nerves = prompts.Of("time-critical.nerves-perfusion")!.Text;
        foreach (var word in new[] { "anterior interosseous", "posterior interosseous", "ulnar", "pulse", "before and after", "local protocol", "11 of 48" })
        {
            Assert.Contains(word, nerves, StringComparison.Ordinal);
        }

        Assert.NotNull(prompts.Of("time-critical.compartment"));
        Assert.All(prompts.Where(p => p.Urgency == Urgency.TimeCritical), p => Assert.Contains("local", p.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Undisplaced_BringsNoTimeCriticalPrompt() =>
        Assert.DoesNotContain(Marked(Boy(6), new() { Injuries = [SuspectedInjury.Supracondylar] }), p => p.Urgency == Urgency.TimeCritical);

    [Fact]
    public void ReductionDone_StillAsksForNerves() =>
        Assert.NotNull(Marked(Boy(30), new() { ReductionDone = true }).Of("time-critical.nerves-perfusion"));

    [Fact]
    public void AtMostThree_AreVisible_TheMostUrgentFirst()
    {
        var all = Marked(Boy(9), new()
        {
            Displaced = true,
            Open = true,
            Dislocated = true,
            Effusion = Call.Yes,
            Unwell = true,
            Injuries = [SuspectedInjury.ElbowDislocation, SuspectedInjury.RadialHeadOrNeck, SuspectedInjury.UlnarShaft],
        });
        Assert.True(all.Count > 5);
        var visible = ElbowRules.Visible(all, new HashSet<string>());
        Assert.Equal(3, visible.Count);
        Assert.All(visible, p => Assert.Equal(Urgency.TimeCritical, p.Urgency));
        var next = ElbowRules.Visible(all, visible.Select(p => p.Code).ToHashSet());
        Assert.Empty(next.Intersect(visible));
        Assert.NotEmpty(next);
    }

    [Theory]
    [InlineData(SuspectedInjury.UlnarShaft, 8, "associated.ulna-radial-head")]
    [InlineData(SuspectedInjury.RadialHeadDislocation, 8, "associated.radial-head-ulna")]
    [InlineData(SuspectedInjury.Coronoid, 40, "associated.coronoid-radial-head")]
    [InlineData(SuspectedInjury.ElbowDislocation, 40, "associated.dislocation-coronoid-radial-head")]
    [InlineData(SuspectedInjury.RadialHeadOrNeck, 40, "associated.radial-head-beyond")]
    [InlineData(SuspectedInjury.MedialEpicondyle, 11, "associated.epicondyle-joint")]
    [InlineData(SuspectedInjury.LateralCondyle, 6, "associated.lateral-condyle-view")]
    [InlineData(SuspectedInjury.Supracondylar, 6, "associated.supracondylar-forearm")]
    public void AssociatedInjuries_AreAskedFor(SuspectedInjury injury, double years, string code) =>
        Assert.NotNull(Marked(Boy(years), new() { Injuries = [injury] }).Of(code));

    [Fact]
    public void DropSign_OnlyInAdultsAfterReduction()
    {
        RuleInput At(FilmContext context, double years, double gap) => new()
        {
            Patient = Boy(years),
            View = View.Lateral,
            Context = context,
            Measurements = [Value("ulnohumeral-gap", gap)],
        };
        Assert.NotNull(ElbowRules.Evaluate(At(FilmContext.AfterReduction, 40, 4.0)).Of("ulnohumeral-gap.limit"));
        Assert.Null(ElbowRules.Evaluate(At(FilmContext.Acute, 40, 4.0)).Of("ulnohumeral-gap.limit"));
        Assert.Null(ElbowRules.Evaluate(At(FilmContext.AfterReduction, 8, 4.0)).Of("ulnohumeral-gap.limit"));
    }

    [Theory]
    [InlineData(FilmContext.AfterReduction)]
    [InlineData(FilmContext.Cast)]
    [InlineData(FilmContext.Fixation)]
    public void TreatedElbows_AreJudgedRestoredByNothing(FilmContext context) =>
        Assert.NotNull(ElbowRules.Evaluate(new() { Patient = Boy(40), View = View.Lateral, Context = context }).Of("context.treated"));
}
