using System.Net;
using ElbowAssist.Geometry;

namespace ElbowAssist.Web;

/// <summary>How the service runs.</summary>
public sealed record ServiceOptions
{
    /// <summary>Address to listen on; loopback unless told otherwise.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>Port; 0 takes a free one.</summary>
    public int Port { get; init; } = 8077;

    /// <summary>What every request must carry as bearer token; null on loopback.</summary>
    public string? Token { get; init; }

    /// <summary>Host names besides the loopback ones by which the service may be called.</summary>
    public IReadOnlyList<string> AllowedHosts { get; init; } = [];

    /// <summary>Origins of web viewers that may call the service, e.g. <c>https://viewer.example</c>.</summary>
    public IReadOnlyList<string> AllowedOrigins { get; init; } = [];

    /// <summary>Folder with the demo studies, or null.</summary>
    public string? DemoFolder { get; init; }

    /// <summary>Folder whose films become studies as they arrive, or null.</summary>
    public string? WatchFolder { get; init; }

    /// <summary>Address of the DICOMweb service of an archive films may be fetched from, or null.</summary>
    public Uri? Archive { get; init; }

    /// <summary>What the archive wants as bearer token, or null.</summary>
    public string? ArchiveToken { get; init; }

    /// <summary>Where OpenTelemetry data is sent to, or null to send none anywhere.</summary>
    public Uri? TelemetryEndpoint { get; init; }

    /// <summary>Fewest bytes a second at which a body may arrive.</summary>
    public double MinBytesPerSecond { get; init; } = 1024;

    /// <summary>How long a body may be slower than that, and how long the headers may take at most twice over.</summary>
    public TimeSpan SlowGrace { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Most bytes of a request; a single film fits many times.</summary>
    public long MaxRequestBytes { get; init; } = InputLimits.RequestBytes;

    /// <summary>Films read at the same time.</summary>
    public int Workers { get; init; } = Math.Max(1, Environment.ProcessorCount);

    /// <summary>Requests that may wait for a worker; more are turned away with 429.</summary>
    public int Waiting { get; init; } = 16;

    /// <summary>Longest time a reading may take.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);
}
