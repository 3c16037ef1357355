namespace ElbowAssist.Anatomy.Rules;

/// <summary>A place to look at again once an effusion is seen.</summary>
/// <param name="Place">Trade name of the place.</param>
/// <param name="Shares">Share of the fractures found there in percent, by publication.</param>
public sealed record SecondLookPlace(string Place, IReadOnlyList<(double Percent, Publication Source)> Shares);

/// <summary>How often a fracture was found behind an effusion without a visible one.</summary>
/// <param name="Text">The published figure with its count.</param>
/// <param name="Source">The publication.</param>
public sealed record OccultShare(string Text, Publication Source);

/// <summary>
/// Places in order of frequency and the published shares, for children and for adults. The shares contradict each other
/// and are always shown together.
/// </summary>
public static class EffusionTable
{
    /// <summary>Places in the growing elbow, most frequent first.</summary>
    public static IReadOnlyList<SecondLookPlace> ChildPlaces { get; } =
    [
        new("supracondylar cortex", [(43, Publications.Kappelhof), (53, Publications.Skaggs)]),
        new("proximal ulna with olecranon", [(19, Publications.Kappelhof), (26, Publications.Skaggs)]),
        new("radial head and neck", [(17, Publications.Kappelhof), (9, Publications.Skaggs)]),
        new("lateral condyle", [(14, Publications.Kappelhof), (12, Publications.Skaggs)]),
    ];

    /// <summary>Places in the adult. Only the radial head has a published share; the others follow in no published order.</summary>
    public static IReadOnlyList<SecondLookPlace> AdultPlaces { get; } =
    [
        new("radial head and neck", [(86.6, Publications.ODwyer)]),
        new("coronoid", []),
        new("olecranon", []),
        new("capitellum", []),
    ];

    /// <summary>Occult fracture in children.</summary>
    public static IReadOnlyList<OccultShare> ChildShares { get; } =
    [
        new("76 % (34 of 45, posterior fat pad, healing seen at 3 weeks)", Publications.Skaggs),
        new("44.6 % (104 of 250, any fat-pad sign, 95 % interval 30.4 to 59.7)", Publications.Kappelhof),
    ];

    /// <summary>Occult fracture in adults, magnetic resonance as reference.</summary>
    public static IReadOnlyList<OccultShare> AdultShares { get; } =
    [
        new("75 % of 20", Publications.ODwyer),
        new("6 of 6", Publications.Major),
    ];
}
