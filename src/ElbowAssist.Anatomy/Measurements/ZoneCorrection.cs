using System.Collections.ObjectModel;

namespace ElbowAssist.Anatomy.Measurements;

/// <summary>
/// How the shares of redraws in the zones become probabilities that hold on simulated calibration films: p^(1/T), made to
/// sum to 1 (temperature scaling, Guo, Pleiss, Sun and Weinberger, ICML 2017), mixed with how often each zone occurred.
/// </summary>
/// <param name="Temperature">T; above 1 makes probabilities less extreme.</param>
/// <param name="Mix">Weight from 0 to 1 of the shares of the zones on the calibration films.</param>
/// <param name="Prior">Those shares by zone name.</param>
public sealed record ZoneCorrection(double Temperature, double Mix, IReadOnlyDictionary<string, double> Prior)
{
    /// <summary>The corrected probabilities.</summary>
    /// <param name="shares">Share of redraws by zone name, summing to 1.</param>
    public IReadOnlyDictionary<string, double> Apply(IReadOnlyDictionary<string, double> shares)
    {
        ArgumentNullException.ThrowIfNull(shares);
        var powers = shares.ToDictionary(s => s.Key, s => Math.Pow(s.Value, 1 / Temperature), StringComparer.Ordinal);
        var total = powers.Values.Sum();
        return new ReadOnlyDictionary<string, double>(powers.ToDictionary(
            p => p.Key,
            p => ((1 - Mix) * p.Value / total) + (Mix * Prior.GetValueOrDefault(p.Key)),
            StringComparer.Ordinal));
    }
}
