using System.Collections.Immutable;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Reading.Walks;

/// <summary>What the rules need of a walk: the reader's standing answers, and nothing of the tool's.</summary>
public static class WalkMarks
{
    private static readonly (string ItemId, GrowthCentre Centre)[] Centres =
    [
        ("growth.capitellum", GrowthCentre.Capitellum),
        ("growth.radial-head", GrowthCentre.RadialHead),
        ("growth.medial-epicondyle", GrowthCentre.MedialEpicondyle),
        ("growth.trochlea", GrowthCentre.Trochlea),
        ("growth.olecranon", GrowthCentre.Olecranon),
        ("growth.lateral-epicondyle", GrowthCentre.LateralEpicondyle),
    ];

    /// <summary>The marks of a walk.</summary>
    public static ReaderMarks Of(WalkRecord walk)
    {
        ArgumentNullException.ThrowIfNull(walk);
        var state = Choices(walk, "conclusion.state");
        return new()
        {
            Trauma = CallOf(walk, "history.trauma"),
            Effusion = CallOf(walk, "effusion.call"),
            Unwell = CallOf(walk, "history.unwell") == Call.Yes,
            Injuries = [.. Choices(walk, "conclusion.injuries").Select(c => InjuryWords.TryParse(c, out var i) ? i : (SuspectedInjury?)null).OfType<SuspectedInjury>()],
            Displaced = state.Contains("displaced"),
            Dislocated = state.Contains("dislocated"),
            ReductionDone = state.Contains("reduction-done"),
            Open = state.Contains("open"),
            GrowthCentres = Centres
                .Select(c => (c.Centre, Mark: MarkOf(walk, c.ItemId)))
                .Where(c => c.Mark != CentreMark.NotChecked)
                .ToImmutableSortedDictionary(c => c.Centre, c => c.Mark),
        };
    }

    /// <summary>What the walk says of how the films were taken, for the measurements that need it.</summary>
    /// <param name="walk">The walk, or null.</param>
    /// <param name="maturity">Adult or child as the reader states it.</param>
    public static ReaderStatements Statements(WalkRecord? walk, Maturity maturity) => new(
        FullExtensionAndSupination: walk is not null && CallOf(walk, "views.ap-extended") == Call.Yes,
        Maturity: maturity);

    private static ImmutableArray<string> Choices(WalkRecord walk, string itemId) => walk.StandingAnswer(itemId)?.Choices ?? [];

    private static Call CallOf(WalkRecord walk, string itemId) => Choices(walk, itemId) switch
    {
        [WalkChoices.Yes] => Call.Yes,
        [WalkChoices.No] => Call.No,
        [WalkChoices.CannotTell] => Call.CannotTell,
        _ => Call.NotMade,
    };

    private static CentreMark MarkOf(WalkRecord walk, string itemId) => Choices(walk, itemId) switch
    {
        [WalkChoices.Seen] => CentreMark.Seen,
        [WalkChoices.NotSeen] => CentreMark.NotSeen,
        [WalkChoices.Fused] => CentreMark.Fused,
        _ => CentreMark.NotChecked,
    };
}
