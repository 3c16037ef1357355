using System.Reflection;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Reasons;
using ElbowAssist.Testing;

namespace ElbowAssist.Reading.Tests.Reasons;

public sealed class ReasonTableTests
{
    [Fact]
    public void EveryCode_HasASentence()
    {
        var codes = new[] { typeof(ReasonCodes), typeof(FilmReasons) }
            .SelectMany(t => t.GetFields(BindingFlags.Public | BindingFlags.Static)).Select(f => (string)f.GetRawConstantValue()!);
        Assert.All(codes, c => Assert.True(ReasonTable.Default.Has(c), c));
    }

    [Fact]
    public void NoSentence_ReassuresOrAsksToMoveTheLimb() =>
        Assert.All(ReasonTable.Default.Codes, c =>
        {
            ForbiddenWords.AssertNone(ReasonTable.Default[c].Text, c);
            Assert.DoesNotContain("reposition", ReasonTable.Default[c].Text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("repeat the film", ReasonTable.Default[c].Text, StringComparison.OrdinalIgnoreCase);
        });

    [Fact]
    public void EveryLimit_SaysWhereItComesFrom() =>
        Assert.All(AdequacyLimits.Default.All, l => Assert.True(l.Origin.Length > 20 && double.IsFinite(l.Value), l.Name));
}
