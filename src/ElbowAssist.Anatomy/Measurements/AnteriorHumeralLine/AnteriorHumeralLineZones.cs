namespace ElbowAssist.Anatomy.Measurements.AnteriorHumeralLine;

/// <summary>Thirds of the capitellum and what lies outside them.</summary>
internal static class AnteriorHumeralLineZones
{
    /// <summary>Decision limits of the position: the edges of the capitellum and of its thirds.</summary>
    public static IReadOnlyList<double> Limits { get; } = [0, 1.0 / 3, 2.0 / 3, 1];

    /// <summary>The zones from the front to the back of the capitellum.</summary>
    public static IReadOnlyList<Zone> All { get; } =
    [
        new("capitellum-behind-line", double.NegativeInfinity, 0),
        new("anterior-third", 0, 1.0 / 3),
        new("middle-third", 1.0 / 3, 2.0 / 3),
        new("posterior-third", 2.0 / 3, 1),
        new("capitellum-before-line", 1, double.PositiveInfinity),
    ];
}
