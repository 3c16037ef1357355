namespace ElbowAssist.Anatomy.Rules.Growth;

/// <summary>A mark held against the series.</summary>
/// <param name="Centre">The centre.</param>
/// <param name="Mark">The reader's mark.</param>
/// <param name="Verdict">How the mark sits with the series.</param>
public sealed record GrowthJudgement(GrowthCentre Centre, CentreMark Mark, GrowthVerdict Verdict)
{
    /// <summary>
    /// Judges one mark. Unexpected only when outside every series; with sex unknown, only when outside every series of
    /// both sexes. Without an age nothing is judged.
    /// </summary>
    public static GrowthJudgement Of(GrowthCentre centre, CentreMark mark, Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        if (patient.AgeMonths is not { } months || mark == CentreMark.NotChecked)
        {
            return new(centre, mark, GrowthVerdict.NotJudged);
        }

        var years = months / 12.0;
        Sex[] sexes = patient.Sex is { } known ? [known] : [Sex.Female, Sex.Male];
        var verdicts = sexes.Select(sex => Judge(centre, mark, years, sex)).Distinct().ToList();
        return new(centre, mark, verdicts.Count == 1 ? verdicts[0] : GrowthVerdict.Possible);
    }

    private static GrowthVerdict Judge(GrowthCentre centre, CentreMark mark, double years, Sex sex)
    {
        var appearance = GrowthTable.Appearance(centre, sex);
        var fusion = GrowthTable.Fusion(centre, sex);
        return mark switch
        {
            CentreMark.Seen when years < appearance.From || years > fusion.To => GrowthVerdict.Unexpected,
            CentreMark.Seen when years >= appearance.To && years < fusion.From => GrowthVerdict.Expected,
            CentreMark.NotSeen when years < appearance.From => GrowthVerdict.Expected,
            // Once every series has it joined, "not seen" most likely means that no separate centre is left to see.
            CentreMark.NotSeen when years > appearance.To && years <= fusion.To => GrowthVerdict.Unexpected,
            CentreMark.Fused when years < fusion.From => GrowthVerdict.Unexpected,
            CentreMark.Fused when years > fusion.To => GrowthVerdict.Expected,
            _ => GrowthVerdict.Possible,
        };
    }
}
