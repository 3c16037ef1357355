using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace ElbowAssist.Web.Watching;

/// <summary>
/// What the service can be watched by: activities and counters of .NET, which OpenTelemetry collects under the name
/// <c>ElbowAssist</c>. No name, identifier, address or content is among them.
/// </summary>
internal static class Telemetry
{
    public const string Name = "ElbowAssist";

    private static readonly Meter Meter = new(Name);

    public static ActivitySource Source { get; } = new(Name);

    public static Counter<long> FilmsRead { get; } = Meter.CreateCounter<long>("elbowassist.films.read", "{film}", "Films read for programs");

    public static Counter<long> TurnedAway { get; } = Meter.CreateCounter<long>("elbowassist.requests.turned_away", "{request}", "Requests turned away because too many waited");

    public static Histogram<double> ReadSeconds { get; } = Meter.CreateHistogram<double>("elbowassist.film.read.duration", "s", "Time to read a film");
}
