using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading;

/// <summary>Between the records of a reading and the rules of the anatomy.</summary>
public static class RuleBridge
{
    /// <summary>The rule input of one film. Withheld measurements go in without a value, so no rule speaks of them.</summary>
    public static RuleInput ToRuleInput(
        View view,
        Patient patient,
        FilmContext context,
        IEnumerable<Measurement> measurements,
        ReaderMarks? marks = null,
        Maturity stated = Maturity.Unknown) => new()
        {
            View = view,
            Patient = patient,
            Context = context,
            StatedMaturity = stated,
            Marks = marks ?? ReaderMarks.None,
            Measurements = [.. measurements.Select(ToRuleMeasurement)],
        };

    /// <summary>The prompts of a reading, the most urgent first.</summary>
    public static IReadOnlyList<Prompt> Prompts(RuleInput input) =>
        [.. ElbowRules.Evaluate(input).Select(p => new Prompt(p.Code, p.Text, p.Source))];

    private static RuleMeasurement ToRuleMeasurement(Measurement m) => m.State == MeasurementState.Withheld
        ? RuleMeasurement.Withheld(m.Name)
        : new(m.Name, m.Value, m.Redraw95?.Low, m.Redraw95?.High, m.State == MeasurementState.EitherSide);
}
