using System.Collections.Immutable;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Anatomy.Rules.Growth;

namespace ElbowAssist.Anatomy.Tests.Rules;

/// <summary>Short ways to write a case for the rules.</summary>
internal static class Case
{
    public static Patient Girl(double years) => new((int)Math.Round(years * 12), Sex.Female);

    public static Patient Boy(double years) => new((int)Math.Round(years * 12), Sex.Male);

    public static RuleMeasurement Value(string name, double value, double half = 0.01, bool eitherSide = false) =>
        new(name, value, value - half, value + half, eitherSide);

    public static IReadOnlyList<RulePrompt> Lateral(Patient patient, params RuleMeasurement[] measurements) =>
        ElbowRules.Evaluate(new RuleInput { Patient = patient, View = View.Lateral, Measurements = measurements });

    public static IReadOnlyList<RulePrompt> Ap(Patient patient, params RuleMeasurement[] measurements) =>
        ElbowRules.Evaluate(new RuleInput { Patient = patient, View = View.Ap, Measurements = measurements });

    public static IReadOnlyList<RulePrompt> Marked(Patient patient, ReaderMarks marks) =>
        ElbowRules.Evaluate(new RuleInput { Patient = patient, View = View.Lateral, Marks = marks });

    public static ReaderMarks Centres(params (GrowthCentre Centre, CentreMark Mark)[] marks) =>
        new() { GrowthCentres = marks.ToImmutableSortedDictionary(m => m.Centre, m => m.Mark) };

    public static RulePrompt? Of(this IReadOnlyList<RulePrompt> prompts, string code) =>
        prompts.FirstOrDefault(p => p.Code == code);
}
