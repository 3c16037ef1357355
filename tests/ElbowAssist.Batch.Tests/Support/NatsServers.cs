using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using ElbowAssist.Testing;

namespace ElbowAssist.Batch.Tests.Support;

/// <summary>NATS servers on loopback with JetStream: one, or a cluster.</summary>
internal sealed class NatsServers : IDisposable
{
    private const string Program = "/usr/sbin/nats-server";

    private readonly TemporaryFolder folder = new();
    private readonly int[] ports;
    private readonly int[] clusterPorts;
    private readonly Process?[] servers;

    public NatsServers(int count)
    {
        (ports, clusterPorts, servers) = (FreePorts(count), FreePorts(count), new Process?[count]);
        for (var i = 0; i < count; i++)
        {
            Start(i);
        }
    }

    /// <summary>Whether the server is installed; continuous integration must have it.</summary>
    public static bool Installed => File.Exists(Program) || Environment.GetEnvironmentVariable("CI") == "true";

    /// <summary>Addresses of all servers.</summary>
    public string Addresses => string.Join(',', ports.Select(p => string.Create(CultureInfo.InvariantCulture, $"nats://127.0.0.1:{p}")));

    public void Start(int server)
    {
        List<string> arguments =
        [
            "--addr", "127.0.0.1", "--port", Text(ports[server]), "--jetstream", "--store_dir", folder.File(Text(server)),
            "--name", "n" + Text(server), "--log", folder.File(Text(server) + ".log"),
        ];
        if (servers.Length > 1)
        {
            arguments.AddRange(
            [
                "--cluster_name", "tests", "--cluster", "nats://127.0.0.1:" + Text(clusterPorts[server]),
                "--routes", string.Join(',', clusterPorts.Select(p => "nats://127.0.0.1:" + Text(p))),
            ]);
        }

        servers[server] = Process.Start(new ProcessStartInfo(Program, arguments) { UseShellExecute = false })!;
    }

    public void Kill(int server)
    {
        servers[server]?.Kill();
        servers[server]?.WaitForExit();
        servers[server]?.Dispose();
        servers[server] = null;
    }

    public void Dispose()
    {
        for (var i = 0; i < servers.Length; i++)
        {
            Kill(i);
        }

        folder.Dispose();
    }

    private static int[] FreePorts(int count)
    {
        var listeners = Enumerable.Range(0, count).Select(_ => new TcpListener(IPAddress.Loopback, 0)).ToList();
        listeners.ForEach(l => l.Start());
        int[] free = [.. listeners.Select(l => ((IPEndPoint)l.LocalEndpoint).Port)];
        listeners.ForEach(l => l.Dispose());
        return free;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>A test with a NATS server; without one it says so, except in continuous integration.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NatsFactAttribute : FactAttribute
{
    public NatsFactAttribute() => Skip = NatsServers.Installed ? null : "Not installed: nats-server; tests/prepare installs it.";
}

/// <inheritdoc cref="NatsFactAttribute"/>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NatsTheoryAttribute : TheoryAttribute
{
    public NatsTheoryAttribute() => Skip = NatsServers.Installed ? null : "Not installed: nats-server; tests/prepare installs it.";
}
