namespace ElbowAssist.Anatomy.Rules;

/// <summary>
/// Reminders of what no film shows. They fire on what the reader marked, carry no threshold and defer to the local protocol.
/// </summary>
internal static class TimeCriticalRule
{
    public static IEnumerable<RulePrompt> Apply(RuleInput input)
    {
        var marks = input.Marks;
        var severe = marks.Displaced || marks.AnyDislocation || marks.Open;
        if (severe || marks.ReductionDone)
        {
            yield return NervesAndPerfusion(marks);
        }

        if (marks.Open)
        {
            yield return new(
                "time-critical.open",
                "Open injury marked: a joint that is open can become septic. Follow the local protocol now.",
                Publications.LocalProtocol.Citation,
                Urgency.TimeCritical);
        }

        if (severe || marks.ReductionDone)
        {
            yield return new(
                "time-critical.compartment",
                "Think of compartment syndrome of the forearm: pain out of proportion or on passive stretch of the fingers; in a child, growing need of pain relief. Follow the local protocol.",
                Publications.LocalProtocol.Citation,
                Urgency.TimeCritical);
        }

        if (marks is { Unwell: true, Effusion: Call.Yes, Trauma: not Call.No })
        {
            yield return new(
                "time-critical.septic-joint",
                "Effusion in an unwell patient: think of a septic joint, also after an injury. Follow the local protocol.",
                Publication.Join([Publications.Murphy, Publications.LocalProtocol]),
                Urgency.TimeCritical);
        }
    }

    private static RulePrompt NervesAndPerfusion(ReaderMarks marks)
    {
        var text = "Nerves and perfusion, documented before and after any reduction: median with anterior interosseous, radial with posterior interosseous, ulnar; radial pulse, colour and capillary refill of the hand.";
        List<Publication> sources = [];
        if (marks.Displaced && marks.Injuries.Contains(SuspectedInjury.Supracondylar))
        {
            text += " No radial pulse was felt in 11 of 48 children with a completely displaced supracondylar fracture.";
            sources.Add(Publications.Valentini);
        }

        sources.Add(Publications.LocalProtocol);
        return new(
            "time-critical.nerves-perfusion",
            text + " A pale or pulseless hand cannot wait; follow the local protocol.",
            Publication.Join(sources),
            Urgency.TimeCritical);
    }
}
