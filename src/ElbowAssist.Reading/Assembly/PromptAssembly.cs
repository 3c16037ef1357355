using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading.Assembly;

/// <summary>Asks the rules, showing them only what the reading gives.</summary>
internal static class PromptAssembly
{
    public static IReadOnlyList<Prompt> Of(ReadingInput input, IReadOnlyList<Measurement> measurements)
    {
        var prompts = ElbowRules.Evaluate(new RuleInput
        {
            Patient = input.Patient,
            View = input.View.Name,
            Context = input.Context,
            StatedMaturity = input.Statements.Maturity,
            Marks = input.Marks,
            Measurements = [.. measurements.Select(m => new RuleMeasurement(
                m.Name, m.Value, m.Redraw95?.Low, m.Redraw95?.High, m.State == MeasurementState.EitherSide))],
        });
        return [.. prompts.Select(p => new Prompt(p.Code, p.Text, p.Source))];
    }
}
