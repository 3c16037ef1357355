using System.CommandLine;
using System.Globalization;
using System.Net;
using ElbowAssist.Batch.Queue;

namespace ElbowAssist.Cli.Commands;

/// <summary>Options that batch and worker share.</summary>
internal static class QueueOptionSet
{
    public static Option<string?> Server() => new("--server")
    {
        Description = "Addresses of NATS servers with JetStream, parted by commas, e.g. nats://one:4222,nats://two:4222.",
        HelpName = "URL",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (text.Split(',').All(a => Uri.TryCreate(a, UriKind.Absolute, out var uri) && uri.Scheme is "nats" or "tls"))
            {
                return text;
            }

            result.AddError($"--server takes addresses such as nats://localhost:4222, not \"{text}\".");
            return null;
        },
    };

    public static Option<string?> Credentials() => new("--credentials") { Description = "File with the credentials for the servers.", HelpName = "FILE" };

    public static Option<int> Threads() => Number("--threads", "Films read at the same time; as many as cores by default.", 1, 1024, Environment.ProcessorCount);

    public static Option<int> Number(string name, string description, int least, int most, int usual) => new(name)
    {
        Description = description,
        HelpName = "N",
        DefaultValueFactory = _ => usual,
        CustomParser = result =>
        {
            if (int.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
            {
                return number;
            }

            result.AddError(string.Create(CultureInfo.InvariantCulture, $"{name} takes a number from {least} to {most}."));
            return 0;
        },
    };

    public static Option<IPEndPoint?> Monitor(string description) => new("--monitor")
    {
        Description = description,
        HelpName = "[ADDRESS:]PORT",
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (ushort.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var port))
            {
                return new IPEndPoint(IPAddress.Loopback, port);
            }

            if (IPEndPoint.TryParse(text, out var address) && address.Port > 0)
            {
                return address;
            }

            result.AddError("--monitor takes a port such as 9400, or an address and port such as 0.0.0.0:9400.");
            return null;
        },
    };

    /// <summary>The servers, or null where none is named.</summary>
    public static QueueOptions? Of(ParseResult parsed, Option<string?> server, Option<string?> credentials) =>
        parsed.GetValue(server) is { } servers ? new QueueOptions { Servers = servers, CredentialsFile = parsed.GetValue(credentials) } : null;
}
