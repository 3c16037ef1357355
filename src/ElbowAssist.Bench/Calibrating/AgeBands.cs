namespace ElbowAssist.Bench.Calibrating;

/// <summary>The age bands in which figures are given and factors fitted.</summary>
public static class AgeBands
{
    /// <summary>Name, youngest age in months included, oldest excluded.</summary>
    public static IReadOnlyList<(string Name, int From, int? To)> All { get; } =
        [("0.5-2 y", 0, 24), ("2-5 y", 24, 60), ("5-10 y", 60, 120), ("10-16 y", 120, 192), ("adult", 192, null)];

    /// <summary>From wide to narrow: everybody, growing and grown, the bands.</summary>
    internal static IReadOnlyList<IReadOnlyList<(int From, int? To)>> Levels { get; } =
        [[(0, null)], [(0, 192), (192, null)], [.. All.Select(b => (b.From, b.To))]];

    /// <summary>Whether an age falls into a band; an unknown age falls into none but the whole.</summary>
    internal static bool Holds((int From, int? To) band, int? ageMonths) =>
        band is (0, null) || (ageMonths is { } age && age >= band.From && !(age >= band.To));
}
