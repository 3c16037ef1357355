namespace ElbowAssist.Batch.Queue;

/// <summary>How batch and workers meet on a server.</summary>
public sealed record QueueOptions
{
    /// <summary>Addresses of the servers, parted by commas, e.g. <c>nats://one:4222,nats://two:4222</c>.</summary>
    public required string Servers { get; init; }

    /// <summary>File with the server's credentials, or null.</summary>
    public string? CredentialsFile { get; init; }

    /// <summary>Servers that keep each message and result; 3 survives the loss of one of three.</summary>
    public int Replicas { get; init; } = 1;

    /// <summary>After how long a film that a worker has taken and not finished is given to another.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>How long a result may be late before it is looked for, and how long a film that could not be read rests before it is tried again.</summary>
    public TimeSpan Rest { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>How long servers may be away at a stretch before a batch ends, or a worker lets go of the film in hand.</summary>
    public TimeSpan Outage { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>Most films of a batch that wait or are being read at a time; what waits lies on the servers.</summary>
    public int Window { get; init; } = 256;

    /// <summary>Whether workers open the films themselves, below a folder of their own, in place of taking them from the servers.</summary>
    public bool InPlace { get; init; }
}
