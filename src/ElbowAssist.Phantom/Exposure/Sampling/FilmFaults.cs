using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Exposure.Sampling;

/// <summary>Stable codes of the faults of exposure, processing and field, and how often they are drawn (own estimates).</summary>
public static class FilmFaults
{
    /// <summary>Too little dose: noise.</summary>
    public const string Underexposed = "underexposed";

    /// <summary>Too much dose: the detector saturates in thin parts.</summary>
    public const string Overexposed = "overexposed";

    /// <summary>Window too narrow: shadows or lights are cut off.</summary>
    public const string NarrowWindow = "narrow-window";

    /// <summary>Window too wide: little contrast.</summary>
    public const string FlatContrast = "flat-contrast";

    /// <summary>The arm moved.</summary>
    public const string Motion = "motion";

    /// <summary>Scanned or stored with too few pixels.</summary>
    public const string LowResolution = "low-resolution";

    /// <summary>Edges and local contrast far overdone.</summary>
    public const string OverProcessed = "over-processed";

    /// <summary>The field cuts through the elbow.</summary>
    public const string Cropped = "cropped";

    /// <summary>Low values are bone.</summary>
    public const string Inverted = "inverted";

    /// <summary>A second film lies on the same plate.</summary>
    public const string SecondFilm = "second-film";

    /// <summary>A helper's hand reaches into the field.</summary>
    public const string HelperHand = "helper-hand";

    private static readonly (string Code, double Mixed)[] Shares =
    [
        (Underexposed, 0.07), (Overexposed, 0.05), (NarrowWindow, 0.06), (FlatContrast, 0.05), (Motion, 0.03), (LowResolution, 0.04),
        (OverProcessed, 0.06), (Cropped, 0.06), (Inverted, 0.05), (SecondFilm, 0.02), (HelperHand, 0.03),
    ];

    /// <summary>All codes.</summary>
    public static IReadOnlyList<string> All => [.. Shares.Select(s => s.Code)];

    /// <summary>Draws the faults of a film: none if good, by their shares if mixed, one to three if poor.</summary>
    internal static HashSet<string> Draw(CounterRandom random, Adequacy adequacy)
    {
        var faults = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (code, share) in Shares)
        {
            // Drawn for every film so that the later draws stay the same.
            var isDrawn = random.Chance(adequacy == Adequacy.Poor ? Math.Min(0.5, share * 2.5) : share);
            if (isDrawn && adequacy != Adequacy.Good)
            {
                faults.Add(code);
            }
        }

        var fallback = Shares[(int)(random.Uniform() * Shares.Length)].Code;
        if (adequacy == Adequacy.Poor && faults.Count == 0)
        {
            faults.Add(fallback);
        }

        return faults;
    }
}
