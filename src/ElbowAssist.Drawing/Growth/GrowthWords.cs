using System.Globalization;
using ElbowAssist.Anatomy.Rules.Growth;

namespace ElbowAssist.Drawing.Growth;

/// <summary>Words on the strip and beside it.</summary>
internal static class GrowthWords
{
    public static string Age(int months) => months < 24
        ? string.Create(CultureInfo.InvariantCulture, $"{months} months")
        : months % 12 == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{months / 12} years")
            : string.Create(CultureInfo.InvariantCulture, $"{months / 12} y {months % 12} m");

    public static string Mark(CentreMark mark) => mark switch
    {
        CentreMark.Seen => "seen",
        CentreMark.NotSeen => "not seen",
        CentreMark.Fused => "fused",
        _ => "not checked",
    };

    public static string MarkAndVerdict(GrowthJudgement judgement) => judgement.Verdict switch
    {
        GrowthVerdict.Expected => Mark(judgement.Mark) + ": expected",
        GrowthVerdict.Possible => Mark(judgement.Mark) + ": possible",
        GrowthVerdict.Unexpected => Mark(judgement.Mark) + ": unexpected",
        _ => Mark(judgement.Mark),
    };
}
