using ElbowAssist.Reading;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Holds figures against the limits of the data file.</summary>
internal static class Checks
{
    /// <summary>A figure that must reach its limit.</summary>
    public static AdequacyCheck AtLeast(AdequacyLimits limits, string name, double value, string reason) =>
        Made(name, value, limits[name], value >= limits[name], reason);

    /// <summary>A figure that must not exceed its limit.</summary>
    public static AdequacyCheck AtMost(AdequacyLimits limits, string name, double value, string reason) =>
        Made(name, value, limits[name], value <= limits[name], reason);

    /// <summary>A figure that must reach a limit of another name.</summary>
    public static AdequacyCheck AtLeast(string name, double value, double limit, string reason) =>
        Made(name, value, limit, value >= limit, reason);

    /// <summary>A figure that must not exceed a limit of another name.</summary>
    public static AdequacyCheck AtMost(string name, double value, double limit, string reason) =>
        Made(name, value, limit, value <= limit, reason);

    private static AdequacyCheck Made(string name, double value, double limit, bool met, string reason) =>
        new(name, value, limit, met, met ? null : reason);
}
