using System.Globalization;

namespace ElbowAssist.Anatomy.Rules.Growth;

/// <summary>Prompts from the reader's marks of growth centres.</summary>
internal static class GrowthRule
{
    public static IEnumerable<RulePrompt> Apply(RuleInput input)
    {
        var marks = input.Marks.GrowthCentres;
        if (input.Maturity == Maturity.Adult)
        {
            yield break;
        }

        var judgements = marks.Select(m => GrowthJudgement.Of(m.Key, m.Value, input.Patient)).ToList();
        if (LookInJoint(input, judgements) is { } look)
        {
            yield return look;
        }

        var unexpected = judgements
            .Where(j => j.Verdict == GrowthVerdict.Unexpected)
            .Where(j => j.Centre != GrowthCentre.MedialEpicondyle || j.Mark != CentreMark.NotSeen)
            .ToList();
        if (unexpected.Count > 0)
        {
            yield return new(
                "growth.unexpected",
                $"{Listed(unexpected)}: outside every series held for {Group(input.Patient)} of {Age(input.Patient)}. " +
                "Look again: a fragment can pass for a centre, and a centre can lie elsewhere than expected. " +
                GrowthTable.AssumedSpanSentence,
                Publication.Join(GrowthTable.Rows.Where(r => unexpected.Any(u => u.Centre == r.Centre)).Select(r => r.Source).Distinct()),
                Urgency.Soft);
        }
    }

    private static RulePrompt? LookInJoint(RuleInput input, List<GrowthJudgement> judgements)
    {
        var mark = input.Marks.GrowthCentres.GetValueOrDefault(GrowthCentre.MedialEpicondyle);
        var absent = judgements.Any(j =>
            j is { Centre: GrowthCentre.MedialEpicondyle, Mark: CentreMark.NotSeen, Verdict: GrowthVerdict.Unexpected });
        var beforeTrochlea = CentreOrder.TrochleaWithoutMedialEpicondyle(input.Marks.GrowthCentres);
        var dislocated = input.Marks.AnyDislocation && input.Maturity != Maturity.Unknown && mark != CentreMark.Fused;
        if (!absent && !beforeTrochlea && !dislocated)
        {
            return null;
        }

        var why = new List<string>(3);
        if (dislocated)
        {
            why.Add("A dislocation is marked in a growing elbow.");
        }

        if (beforeTrochlea)
        {
            why.Add("The trochlear centre is marked seen and the medial epicondyle not seen: met once in 1031 uninjured elbows, possibly a scoring error.");
        }

        if (absent)
        {
            why.Add($"The medial epicondyle is marked not seen at {Age(input.Patient)}, when every series has it.");
        }

        List<Publication> sources = [Publications.IncarceratedEpicondyle];
        if (beforeTrochlea)
        {
            sources.AddRange([Publications.Goodwin, Publications.SubadultDatabase]);
        }

        if (absent)
        {
            sources.AddRange([Publications.Cheng, Publications.Miyazaki]);
        }

        return new(
            "growth.medial-epicondyle",
            string.Join(' ', why) + " Look for the medial epicondyle inside the joint.",
            Publication.Join(sources.Distinct()),
            Urgency.Strong);
    }

    private static string Listed(List<GrowthJudgement> judgements)
    {
        var parts = judgements.Select(j => j.Centre.InWords() + (j.Mark switch
        {
            CentreMark.Seen => " marked seen",
            CentreMark.NotSeen => " marked not seen",
            _ => " marked fused",
        }));
        var text = string.Join(", ", parts);
        return char.ToUpperInvariant(text[0]) + text[1..];
    }

    private static string Group(Patient patient) => patient.Sex switch
    {
        Sex.Female => "girls",
        Sex.Male => "boys",
        _ => "girls and boys",
    };

    private static string Age(Patient patient) => patient.AgeMonths is not { } months
        ? "unknown age"
        : months < 24
            ? string.Create(CultureInfo.InvariantCulture, $"{months} months")
            : string.Create(CultureInfo.InvariantCulture, $"{months / 12} years");
}
