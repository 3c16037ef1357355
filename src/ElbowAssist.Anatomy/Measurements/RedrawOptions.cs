using System.Collections.ObjectModel;

namespace ElbowAssist.Anatomy.Measurements;

/// <summary>How landmarks are laid again to see how far values move.</summary>
public sealed record RedrawOptions
{
    /// <summary>2 000 draws, seed 1, no calibration factors.</summary>
    public static RedrawOptions Default { get; } = new();

    /// <summary>Number of draws; an even number.</summary>
    public int Draws { get; init; } = 2000;

    /// <summary>Seed of the draws: the same film gives the same interval every time.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>
    /// Factor by measurement name with which the interval is stretched about its value, from conformal calibration on
    /// simulated films; 1 where a name is missing.
    /// </summary>
    public IReadOnlyDictionary<string, double> Factors { get; init; } = ReadOnlyDictionary<string, double>.Empty;

    /// <summary>Correction of zone probabilities by measurement name; shares of redraws stay as they are where a name is missing.</summary>
    public IReadOnlyDictionary<string, ZoneCorrection> Zones { get; init; } = ReadOnlyDictionary<string, ZoneCorrection>.Empty;
}
