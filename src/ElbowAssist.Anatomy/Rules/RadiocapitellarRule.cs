namespace ElbowAssist.Anatomy.Rules;

/// <summary>How much the place of the radiocapitellar line counts.</summary>
public enum LineWeight
{
    /// <summary>Inside the central third: nothing to weigh.</summary>
    None,

    /// <summary>Counts little.</summary>
    Little,

    /// <summary>Off-centre and to be looked at.</summary>
    SecondLook,

    /// <summary>A miss that counts.</summary>
    Full,
}

/// <summary>
/// The radiocapitellar line. Offsets are signed distances of the line from the centre of the capitellum over the
/// capitellum's extent square to the line, so the line crosses while the offset lies between −0.5 and 0.5.
/// </summary>
public static class RadiocapitellarRule
{
    /// <summary>Lateral view, axis of the radial neck.</summary>
    public const string LateralNeck = "radiocapitellar-line.lateral.neck.offset";

    /// <summary>Lateral view, axis of the radial shaft.</summary>
    public const string LateralShaft = "radiocapitellar-line.lateral.shaft.offset";

    /// <summary>AP view, axis of the radial neck.</summary>
    public const string ApNeck = "radiocapitellar-line.ap.neck.offset";

    /// <summary>AP view, axis of the radial shaft.</summary>
    public const string ApShaft = "radiocapitellar-line.ap.shaft.offset";

    private const double Edge = 0.5;
    private const double CentralThird = 1.0 / 6;

    /// <summary>
    /// Weight of an offset. A miss on a lateral counts at any age; off-centre inside counts on the lateral from 10 years
    /// (girls) and 11 years (boys, or sex unknown); the AP counts little at every age. Source of the ages: Fader 2016.
    /// </summary>
    public static LineWeight Weigh(View view, double offset, Patient patient, Maturity stated = Maturity.Unknown)
    {
        ArgumentNullException.ThrowIfNull(patient);
        var distance = Math.Abs(offset);
        if (distance < CentralThird)
        {
            return LineWeight.None;
        }

        if (view == View.Lateral && distance >= Edge)
        {
            return LineWeight.Full;
        }

        return view == View.Lateral && OffCentreCounts(patient, stated) ? LineWeight.SecondLook : LineWeight.Little;
    }

    internal static IEnumerable<RulePrompt> Apply(RuleInput input) => input.View switch
    {
        View.Lateral => Lateral(input),
        View.Ap => Ap(input),
        _ => [],
    };

    private static IEnumerable<RulePrompt> Lateral(RuleInput input)
    {
        var neck = input.Find(LateralNeck);
        var shaft = input.Find(LateralShaft);
        var line = neck ?? shaft;
        if (line is null)
        {
            yield break;
        }

        var weight = Weigh(View.Lateral, line.Value!.Value, input.Patient, input.StatedMaturity);
        if (weight == LineWeight.Full)
        {
            yield return Miss(input, line, byShaftOnly: neck is null);
        }
        else if (shaft is not null && neck is not null && Math.Abs(shaft.Value!.Value) >= Edge)
        {
            yield return new(
                "radiocapitellar-line.shaft-only",
                "The line of the radial shaft misses the capitellum; the line of the neck crosses it. In uninjured children the shaft line missed in 12.7 %, the neck line in 1.2 %. Look at the radial head and neck again.",
                Publications.Ramirez.Citation,
                Urgency.Soft);
        }
        else if (line.EitherSide && (line.LowOrValue <= -Edge || line.HighOrValue >= Edge))
        {
            yield return new(
                "radiocapitellar-line.near-miss",
                "Laid again, the radiocapitellar line may miss the capitellum. Look at the radial head on every view. " + CausesText(input.Patient),
                Publication.Join([Publications.Ramirez, Publications.FaderLine]),
                Urgency.Soft);
        }
        else if (weight == LineWeight.SecondLook)
        {
            yield return new(
                "radiocapitellar-line.off-centre",
                "The radiocapitellar line crosses the capitellum outside its central third, which counts from 10 years (girls) or 11 years (boys). Look at the radial head and neck again.",
                Publications.FaderLine.Citation,
                Urgency.Soft);
        }
    }

    private static IEnumerable<RulePrompt> Ap(RuleInput input)
    {
        var line = input.Find(ApNeck) ?? input.Find(ApShaft);
        if (line is not null && Math.Abs(line.Value!.Value) >= Edge)
        {
            yield return new(
                "radiocapitellar-line.ap-miss",
                "The radiocapitellar line misses the capitellum on the AP. Alone this counts little: it was met on 2 of 37 children's films. Settle it on the lateral.",
                Publication.Join([Publications.LateralHumeralLine, Publications.FaderLine, Publications.Baskovic]),
                Urgency.Information);
        }
    }

    private static RulePrompt Miss(RuleInput input, RuleMeasurement line, bool byShaftOnly)
    {
        var text = "The radiocapitellar line misses the capitellum. " + CausesText(input.Patient);
        if (byShaftOnly)
        {
            text += " Only the shaft line could be laid; it misses more often in uninjured children than the neck line (12.7 against 1.2 %).";
        }

        if (line.EitherSide)
        {
            text += " Laid again, the line may cross.";
        }

        return new(
            "radiocapitellar-line.miss",
            text,
            Publication.Join([Publications.Ramirez, Publications.MonteggiaMissed, Publications.MonteggiaDelay]),
            Urgency.Strong);
    }

    private static string CausesText(Patient patient) =>
        "Possible causes: " + string.Join(", ", PossibleCauses(patient)) + ".";

    /// <summary>What a line that is off may come from; never one of them alone.</summary>
    public static IReadOnlyList<string> PossibleCauses(Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        List<string> causes =
        [
            "supracondylar fracture",
            "lateral condyle fracture",
            "dislocation of the elbow",
            "dislocation or fracture of the radial head or neck",
            "ulnar fracture or bow with it",
            "an old or congenital dislocation",
        ];
        if (PhysealSeparationRule.IsUnderThree(patient))
        {
            causes.Insert(0, "separation of the distal humeral physis");
        }

        return causes;
    }

    private static bool OffCentreCounts(Patient patient, Maturity stated) => patient.AgeMonths is { } months
        ? months >= (patient.Sex == Sex.Female ? 10 * 12 : 11 * 12)
        : stated is Maturity.Adult;
}
