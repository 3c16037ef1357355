using ElbowAssist.Exchange.Json;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>Which simulated films count as well taken and which as poor, by what was simulated and never by what was read.</summary>
public static class Adequate
{
    /// <summary>Largest view error of a well-taken film, degrees.</summary>
    public const double ViewError = 8;

    /// <summary>Smallest view error of a poor film, degrees.</summary>
    public const double PoorViewError = 18;

    private const string Fault = "fault.";

    // The elbow and its exposure are as good on these as on any other film.
    private static readonly string[] Harmless = [Fault + "inverted", Fault + "second-film", Fault + "helper-hand"];

    /// <summary>Whether a film is well taken; films that were not simulated count as such.</summary>
    public static bool Holds(SimulatedFacts? simulated) =>
        simulated is null || (simulated.ViewErrorDegrees <= ViewError && !Faults(simulated).Any());

    /// <summary>Faults of exposure and field by name, harmless ones left out.</summary>
    public static IEnumerable<string> Faults(SimulatedFacts simulated)
    {
        ArgumentNullException.ThrowIfNull(simulated);
        return simulated.Exposure.Where(f => f.Value > 0 && f.Key.StartsWith(Fault, StringComparison.Ordinal) && !Harmless.Contains(f.Key))
            .Select(f => f.Key[Fault.Length..]);
    }
}
