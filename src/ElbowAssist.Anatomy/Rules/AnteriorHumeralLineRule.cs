namespace ElbowAssist.Anatomy.Rules;

/// <summary>Where the anterior humeral line crosses the capitellum.</summary>
public enum AnteriorLineZone
{
    /// <summary>Capitellum wholly behind the line (position below 0).</summary>
    CapitellumBehindLine,

    /// <summary>Anterior third.</summary>
    AnteriorThird,

    /// <summary>Middle third.</summary>
    MiddleThird,

    /// <summary>Posterior third.</summary>
    PosteriorThird,

    /// <summary>Capitellum wholly in front of the line (position above 1).</summary>
    CapitellumBeforeLine,
}

/// <summary>What the crossing can be held against at an age.</summary>
public enum AnteriorLineExpectation
{
    /// <summary>Age unknown, or under 2 years: position only.</summary>
    PositionOnly,

    /// <summary>2 to under 4 years: anterior or middle third.</summary>
    AnteriorOrMiddleThird,

    /// <summary>4 to under 5 years: both neighbouring readings are shown.</summary>
    Transition,

    /// <summary>From 5 years: middle third.</summary>
    MiddleThird,
}

/// <summary>What the anterior humeral line can and cannot say at an age.</summary>
public static class AnteriorHumeralLineRule
{
    /// <summary>Measurement name of the crossing, line through the distal cortex.</summary>
    public const string Position = "anterior-humeral-line.position";

    /// <summary>Zone of a position from 0 (anterior extreme of the capitellum) to 1 (posterior extreme).</summary>
    public static AnteriorLineZone ZoneOf(double position) => position switch
    {
        < 0 => AnteriorLineZone.CapitellumBehindLine,
        < 1.0 / 3 => AnteriorLineZone.AnteriorThird,
        < 2.0 / 3 => AnteriorLineZone.MiddleThird,
        <= 1 => AnteriorLineZone.PosteriorThird,
        > 1 => AnteriorLineZone.CapitellumBeforeLine,
        _ => throw new ArgumentOutOfRangeException(nameof(position), "The position must be a number."),
    };

    /// <summary>What the line can be held against at an age in months.</summary>
    public static AnteriorLineExpectation ExpectationAt(int? ageMonths) => ageMonths switch
    {
        null or < 24 => AnteriorLineExpectation.PositionOnly,
        < 48 => AnteriorLineExpectation.AnteriorOrMiddleThird,
        < 60 => AnteriorLineExpectation.Transition,
        _ => AnteriorLineExpectation.MiddleThird,
    };

    internal static IEnumerable<RulePrompt> Apply(RuleInput input)
    {
        if (input.View != View.Lateral || input.Find(Position) is not { } line)
        {
            yield break;
        }

        var zone = ZoneOf(line.Value!.Value);
        var expectation = input.StatedMaturity is Maturity.Adult && input.Patient.AgeMonths is null
            ? AnteriorLineExpectation.MiddleThird
            : ExpectationAt(input.Patient.AgeMonths);
        if (zone is AnteriorLineZone.CapitellumBehindLine or AnteriorLineZone.CapitellumBeforeLine)
        {
            yield return Miss(line, zone);
        }
        else if (line is { LowOrValue: < 0, EitherSide: true })
        {
            yield return new(
                "anterior-humeral-line.near-miss",
                "Laid again, the anterior humeral line may run in front of the whole capitellum. Trace the anterior and posterior supracondylar cortex again.",
                Publications.ThisProject.Citation,
                Urgency.Soft);
        }
        else if (zone == AnteriorLineZone.AnteriorThird && expectation == AnteriorLineExpectation.MiddleThird)
        {
            yield return AnteriorThird(line, input.Maturity);
        }
        else if (zone == AnteriorLineZone.AnteriorThird && expectation == AnteriorLineExpectation.Transition)
        {
            yield return new(
                "anterior-humeral-line.transition",
                "The line crosses the anterior third at 4 years. Read as under 4 years, anterior and middle third are about equally common; read as from 5 years, the middle third is expected.",
                Publication.Join([Publications.Herman, Publications.AnteriorLineThesis]),
                Urgency.Information);
        }
    }

    private static RulePrompt Miss(RuleMeasurement line, AnteriorLineZone zone)
    {
        var behind = zone == AnteriorLineZone.CapitellumBehindLine;
        var text = behind
            ? "The capitellum lies wholly behind the anterior humeral line. Look for a supracondylar fracture in extension: trace the anterior and posterior cortex again."
            : "The capitellum lies wholly in front of the anterior humeral line. Look for a supracondylar fracture in flexion: trace the anterior and posterior cortex again.";
        if (line.EitherSide)
        {
            text += " Laid again, the line may touch the capitellum.";
        }

        return new(
            behind ? "anterior-humeral-line.capitellum-behind-line" : "anterior-humeral-line.capitellum-before-line",
            text + " The film may be rotated, or the distal humerus may be: look for a fracture before blaming the view.",
            Publication.Join([Publications.Herman, Publications.Baskovic]),
            Urgency.Strong);
    }

    private static RulePrompt AnteriorThird(RuleMeasurement line, Maturity maturity)
    {
        var text = line.EitherSide
            ? "The line crosses the anterior third and may, laid again or by the other construction, cross the middle third."
            : "The line crosses the anterior third; the middle third is expected at this age.";
        text += maturity == Maturity.Adult
            ? " No adult series was found; in the oldest group measured (16 to 18 years) it was always the middle third."
            : " About a third of uninjured elbows of 4 to 9 years lie outside the middle third.";
        return new(
            "anterior-humeral-line.anterior-third",
            text + " Look for effusion, trace the supracondylar cortex, judge the rotation.",
            Publication.Join(maturity == Maturity.Adult ? [Publications.Baskovic] : [Publications.Herman, Publications.Baskovic]),
            Urgency.Soft);
    }
}
