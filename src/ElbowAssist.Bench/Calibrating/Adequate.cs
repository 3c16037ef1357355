using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Bench.Calibrating;

/// <summary>Which simulated films count as well taken and which as poor, by what was simulated and never by what was read.</summary>
public static class Adequate
{
    /// <summary>Largest view error of a well-taken film, degrees.</summary>
    public const double ViewError = 8;

    /// <summary>Smallest view error of a poor film, degrees.</summary>
    public const double PoorViewError = 18;

    private const string Fault = "fault.";

    /// <summary>Counted dose, in µGy at the detector times its efficiency, below which a film is too noisy; 0.7 and more is usual.</summary>
    public const double NoisyDose = 0.12;

    /// <summary>Share of the grey range cut off at the bright end from which bone is burned out.</summary>
    public const double BurnedOutShare = 0.25;

    /// <summary>Standard deviation of the detector's blur in millimetres from which a film is blurred; 0.07 to 0.17 is usual.</summary>
    public const double BlurredMillimetres = 0.5;

    // The elbow and its exposure are as good on these as on any other film.
    private static readonly string[] Harmless = [Fault + "inverted", Fault + "second-film", Fault + "helper-hand"];

    /// <summary>Whether a film is well taken; films that were not simulated count as such.</summary>
    public static bool Holds(SimulatedFacts? simulated) =>
        simulated is null || (simulated.ViewErrorDegrees <= ViewError && !Faults(simulated).Any());

    /// <summary>Whether a film is exposed or stored beyond a stated degree, by the reason that should be named for it, and whether it spoils soft tissue.</summary>
    public static IReadOnlyList<(string Defect, string Reason, bool HidesSoftTissue, Func<SimulatedFacts, bool> Shown)> Degrees { get; } =
    [
        (FormattableString.Invariant($"counted dose below {NoisyDose} µGy"), FilmReasons.ExposureNoisy, true,
            s => Figure(s, "detectorDoseMicrogray", 1) * Figure(s, "detectorEfficiency", 1) < NoisyDose),
        (FormattableString.Invariant($"{BurnedOutShare:P0} of the grey range cut off at the bright end"), FilmReasons.ExposureBurnedOut, false,
            s => Figure(s, "clipHigh", 0) >= BurnedOutShare),
        (FormattableString.Invariant($"blurred by {BlurredMillimetres} mm at the detector"), FilmReasons.ImageBlurred, true,
            s => Figure(s, "detectorBlurMm", 0) >= BlurredMillimetres),
    ];

    private static double Figure(SimulatedFacts simulated, string name, double unknown) => simulated.Exposure.GetValueOrDefault(name, unknown);

    /// <summary>Faults of exposure and field by name, harmless ones left out.</summary>
    public static IEnumerable<string> Faults(SimulatedFacts simulated)
    {
        ArgumentNullException.ThrowIfNull(simulated);
        return simulated.Exposure.Where(f => f.Value > 0 && f.Key.StartsWith(Fault, StringComparison.Ordinal) && !Harmless.Contains(f.Key))
            .Select(f => f.Key[Fault.Length..]);
    }
}
