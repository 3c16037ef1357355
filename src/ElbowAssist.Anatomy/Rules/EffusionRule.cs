namespace ElbowAssist.Anatomy.Rules;

/// <summary>What follows from an effusion that the reader sees.</summary>
internal static class EffusionRule
{
    /// <summary>Published cut-off in degrees of the anterior fat-pad angle, children only (Poppelaars 2022); reached counts.</summary>
    public const double AnteriorAngleCutOff = 16;

    public const string AnteriorAngle = "fat-pad.anterior.angle";

    public static IEnumerable<RulePrompt> Apply(RuleInput input)
    {
        if (input.Marks.Effusion == Call.Yes)
        {
            if (input.Marks.Trauma == Call.No)
            {
                yield return WithoutTrauma();
            }
            else
            {
                yield return SecondLook(input.Maturity);
            }
        }
        else if (input.Marks.Effusion == Call.NotMade && input.View == View.Lateral && input.Maturity is Maturity.Child or Maturity.Adolescent &&
            input.Find(AnteriorAngle) is { } angle && angle.Value >= AnteriorAngleCutOff)
        {
            yield return new(
                "effusion.anterior-angle",
                "The anterior fat-pad angle reaches the published cut-off of 16° for children. Look at both fat pads; whether there is an effusion is the reader's call.",
                Publications.Poppelaars.Citation,
                Urgency.Soft);
        }
    }

    private static RulePrompt SecondLook(Maturity maturity)
    {
        var child = $"In children look again, in this order: {Places(EffusionTable.ChildPlaces)}. Fracture found later: {Shares(EffusionTable.ChildShares)}.";
        var adult = $"In adults look again at the {EffusionTable.AdultPlaces[0].Place} first (86.6 % of the fractures found), then, in no published order, at {Places(EffusionTable.AdultPlaces.Skip(1))}. Fracture found by magnetic resonance: {Shares(EffusionTable.AdultShares)}.";
        var childSources = EffusionTable.ChildShares.Select(s => s.Source).Append(Publications.SkaggsLetter);
        var adultSources = EffusionTable.AdultShares.Select(s => s.Source);
        return maturity switch
        {
            Maturity.Child => Prompt(child, childSources),
            Maturity.Adult => Prompt(adult, adultSources),
            _ => Prompt(child + " " + adult, childSources.Concat(adultSources)),
        };

        static RulePrompt Prompt(string text, IEnumerable<Publication> sources) =>
            new("effusion.second-look", "Effusion marked. " + text, Publication.Join(sources), Urgency.Strong);
    }

    private static RulePrompt WithoutTrauma() => new(
        "effusion.without-trauma",
        "Effusion marked and no injury: think of a septic joint first, then of bleeding and arthritis. A septic joint cannot wait; follow the local protocol.",
        Publication.Join([Publications.Murphy, Publications.LocalProtocol]),
        Urgency.TimeCritical);

    private static string Places(IEnumerable<SecondLookPlace> places) => string.Join(", ", places.Select(p => p.Place));

    private static string Shares(IReadOnlyList<OccultShare> shares) => string.Join("; ", shares.Select(s => s.Text));
}
