namespace ElbowAssist.Bench.Statistics;

/// <summary>Step-down correction of many probabilities (Holm, Scand J Stat 1979;6:65–70).</summary>
public static class HolmCorrection
{
    /// <summary>Corrected probabilities in the given order; NaN stays NaN and does not count as a comparison.</summary>
    public static IReadOnlyList<double> Of(IReadOnlyList<double> probabilities)
    {
        ArgumentNullException.ThrowIfNull(probabilities);
        var corrected = probabilities.ToArray();
        var ordered = Enumerable.Range(0, corrected.Length).Where(i => !double.IsNaN(corrected[i])).OrderBy(i => corrected[i]).ToList();
        double largest = 0;
        for (var rank = 0; rank < ordered.Count; rank++)
        {
            largest = Math.Max(largest, Math.Min(1, (ordered.Count - rank) * probabilities[ordered[rank]]));
            corrected[ordered[rank]] = largest;
        }

        return corrected;
    }
}
