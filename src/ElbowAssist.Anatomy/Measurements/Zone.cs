namespace ElbowAssist.Anatomy.Measurements;

/// <summary>A named range of values.</summary>
/// <param name="Name">Stable name.</param>
/// <param name="From">Lower end, included.</param>
/// <param name="To">Upper end, excluded.</param>
public sealed record Zone(string Name, double From, double To)
{
    /// <summary>Whether a value falls into the zone.</summary>
    public bool Holds(double value) => value >= From && value < To;
}
