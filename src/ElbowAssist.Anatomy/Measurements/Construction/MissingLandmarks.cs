using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Anatomy.Measurements.Construction;

/// <summary>Why a construction cannot be laid through the landmarks of a film.</summary>
internal static class MissingLandmarks
{
    /// <summary>Reason codes, each once; empty if nothing is missing.</summary>
    public static IReadOnlyList<string> Of(MeasurementDefinition measurement, LaidLandmarks laid)
    {
        var reasons = measurement.Needs.Where(n => n.Landmarks.Count(laid.Has) < n.AtLeast).Select(n => n.Reason);
        if (measurement.RestsOnShaftAxis && SpanOfShaft(laid) < Needs.LeastSpan)
        {
            reasons = reasons.DefaultIfEmpty(ReasonCodes.HumeralLevelsSpanShort);
        }

        return [.. reasons.Distinct()];
    }

    /// <summary>Stretch in W between the highest and the lowest level at which both cortices are on the film.</summary>
    public static double SpanOfShaft(LaidLandmarks laid)
    {
        var lateral = laid.Set.View == View.Lateral;
        var levels = lateral ? Needs.LateralLevels : Needs.ApLevels;
        var seen = Enumerable.Range(1, levels.Length)
            .Where(n => lateral
                ? laid.Has(HumerusAnterior(n)) && laid.Has(HumerusPosterior(n))
                : laid.Has(HumerusLateral(n)) && laid.Has(HumerusMedial(n)))
            .Select(n => levels[n - 1])
            .ToList();
        return seen.Count < 2 ? 0 : seen[0] - seen[^1];
    }
}
