using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Exchange.Json.Studies;

/// <summary>The words of <c>elbowassist/study/1</c>.</summary>
internal static class StudyWords
{
    public static Vocabulary<Maturity> Maturity { get; } = new(
        (Anatomy.Rules.Maturity.Unknown, "unknown"),
        (Anatomy.Rules.Maturity.Child, "child"),
        (Anatomy.Rules.Maturity.Adolescent, "adolescent"),
        (Anatomy.Rules.Maturity.Adult, "adult"));

    public static Vocabulary<Call> Call { get; } = new(
        (Anatomy.Rules.Call.NotMade, "not-made"),
        (Anatomy.Rules.Call.Yes, "yes"),
        (Anatomy.Rules.Call.No, "no"),
        (Anatomy.Rules.Call.CannotTell, "cannot-tell"));

    public static Vocabulary<SuspectedInjury> Injury { get; } =
        new([.. Enum.GetValues<SuspectedInjury>().Select(i => (i, InjuryWords.CodeOf(i)))]);

    public static Vocabulary<GrowthCentre> Centre { get; } =
        new([.. Enum.GetValues<GrowthCentre>().Select(c => (c, c.InWords().Replace(' ', '-')))]);

    public static Vocabulary<CentreMark> Mark { get; } = new(
        (CentreMark.NotChecked, WalkChoices.NotChecked),
        (CentreMark.Seen, WalkChoices.Seen),
        (CentreMark.NotSeen, WalkChoices.NotSeen),
        (CentreMark.Fused, WalkChoices.Fused));

    public static Vocabulary<Urgency> Urgency { get; } = new(
        (Anatomy.Rules.Urgency.TimeCritical, "time-critical"),
        (Anatomy.Rules.Urgency.Strong, "strong"),
        (Anatomy.Rules.Urgency.Soft, "soft"),
        (Anatomy.Rules.Urgency.Information, "information"));

    public static Vocabulary<DifferenceState> Difference { get; } = new(
        (DifferenceState.NoLimit, "no-limit"),
        (DifferenceState.BeyondLimit, "beyond-limit"),
        (DifferenceState.EitherSideOfLimit, "either-side"),
        (DifferenceState.LimitNotReached, "limit-not-reached"));

    public static Vocabulary<WalkTopic> Topic { get; } = new(
        (WalkTopic.History, "history"),
        (WalkTopic.Views, "views"),
        (WalkTopic.Alignment, "alignment"),
        (WalkTopic.Effusion, "effusion"),
        (WalkTopic.Cortex, "cortex"),
        (WalkTopic.GrowthCentres, "growth-centres"),
        (WalkTopic.SecondLook, "second-look"),
        (WalkTopic.Conclusion, "conclusion"));

    public static Vocabulary<WalkVersion> Version { get; } =
        new((WalkVersion.Both, "both"), (WalkVersion.Adult, "adult"), (WalkVersion.Child, "child"));
}
