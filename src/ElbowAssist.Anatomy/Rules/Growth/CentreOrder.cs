namespace ElbowAssist.Anatomy.Rules.Growth;

/// <summary>Two centres that may change places in the order of appearance.</summary>
/// <param name="First">The one usually seen first.</param>
/// <param name="Second">The one usually seen second.</param>
/// <param name="Seen">How often the other order was met.</param>
/// <param name="Source">The publication.</param>
public sealed record AllowedSwap(GrowthCentre First, GrowthCentre Second, string Seen, Publication Source);

/// <summary>The order of appearance, the harmless swaps, and the one combination that asks for a search of the joint.</summary>
public static class CentreOrder
{
    /// <summary>Swaps met in uninjured elbows. They raise no prompt.</summary>
    public static IReadOnlyList<AllowedSwap> Swaps { get; } =
    [
        new(GrowthCentre.RadialHead, GrowthCentre.MedialEpicondyle, "15 of 64 elbows with two centres", Publications.Goodwin),
        new(GrowthCentre.RadialHead, GrowthCentre.MedialEpicondyle, "15 of 33 elbows with two centres", Publications.SubadultDatabase),
        new(GrowthCentre.RadialHead, GrowthCentre.MedialEpicondyle, "together in girls", Publications.Patel),
        new(GrowthCentre.Trochlea, GrowthCentre.Olecranon, "9 of 28 elbows with four centres", Publications.Goodwin),
        new(GrowthCentre.Trochlea, GrowthCentre.Olecranon, "no difference in age", Publications.Patel),
        new(GrowthCentre.Trochlea, GrowthCentre.Olecranon, "olecranon before trochlea in 3154 films", Publications.Cheng),
    ];

    /// <summary>
    /// True if a trochlear centre is seen while the medial epicondyle was looked for and not seen. A medial epicondyle
    /// that is fused or was not checked (AP missing, cropped, under a cast) raises nothing.
    /// </summary>
    public static bool TrochleaWithoutMedialEpicondyle(IReadOnlyDictionary<GrowthCentre, CentreMark> marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        return marks.GetValueOrDefault(GrowthCentre.Trochlea) == CentreMark.Seen &&
            marks.GetValueOrDefault(GrowthCentre.MedialEpicondyle) == CentreMark.NotSeen;
    }
}
