namespace ElbowAssist.Anatomy.Rules;

/// <summary>Under three years an apparent dislocation may be a separation of the whole distal humeral epiphysis.</summary>
internal static class PhysealSeparationRule
{
    public static bool IsUnderThree(Patient patient) => patient.AgeMonths is < 36;

    public static IEnumerable<RulePrompt> Apply(RuleInput input)
    {
        if (!IsUnderThree(input.Patient))
        {
            yield break;
        }

        var marked = input.Marks.AnyDislocation || input.Marks.Injuries.Contains(SuspectedInjury.PhysealSeparation);
        var missed = input.View == View.Lateral && (Misses(input, RadiocapitellarRule.LateralNeck) || Misses(input, RadiocapitellarRule.LateralShaft));
        if (marked || missed)
        {
            yield return new(
                "under-three.physeal-separation",
                "Under 3 years an apparent dislocation of the elbow may be a separation of the distal humeral physis: forearm and capitellum then move together. Consider safeguarding by local policy.",
                Publication.Join([Publications.Transphyseal, Publications.LocalProtocol]),
                Urgency.TimeCritical);
        }
    }

    private static bool Misses(RuleInput input, string name) =>
        input.Find(name) is { } line && Math.Abs(line.Value!.Value) >= 0.5;
}
