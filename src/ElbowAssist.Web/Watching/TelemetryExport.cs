using ElbowAssist.Reading;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace ElbowAssist.Web.Watching;

/// <summary>
/// Sends activities and counters to a collector by OTLP, and no logs: the framework's hold addresses. Protocol, headers and
/// intervals follow the environment variables of the OpenTelemetry specification. Nothing of the machine but the
/// program's name and version goes along.
/// </summary>
internal static class TelemetryExport
{
    // Of the framework only what is counted by route and status: no address, no query.
    private static readonly string[] Meters = [Telemetry.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime"];

    public static void Add(IServiceCollection services, Uri collector, ToolIdentity tool) => services.AddOpenTelemetry()
        .ConfigureResource(resource => resource.Clear().AddService(tool.Name, serviceVersion: tool.Version))
        .WithTracing(tracing => tracing.AddSource(Telemetry.Name).AddOtlpExporter(exporter => Address(exporter, collector, "v1/traces")))
        .WithMetrics(metrics => metrics.AddMeter(Meters).AddOtlpExporter(exporter => Address(exporter, collector, "v1/metrics")));

    private static void Address(OtlpExporterOptions exporter, Uri collector, string path)
    {
        exporter.Protocol = Environment.GetEnvironmentVariable("OTEL_EXPORTER_OTLP_PROTOCOL") == "http/protobuf" ? OtlpExportProtocol.HttpProtobuf : OtlpExportProtocol.Grpc;
        exporter.Endpoint = exporter.Protocol == OtlpExportProtocol.Grpc ? collector : new Uri(collector.AbsoluteUri.TrimEnd('/') + "/" + path);
    }
}
