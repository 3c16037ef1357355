using NATS.Client.Core;

namespace ElbowAssist.Batch.Queue;

/// <summary>Tries again while servers are away or elect a leader.</summary>
internal static class Patiently
{
    private static readonly TimeSpan FirstWait = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(5);

    // An answer that was lost with its server is waited for no longer than this.
    private static readonly TimeSpan LongestTry = TimeSpan.FromSeconds(20);

    /// <summary>Runs an operation that may be run again until it succeeds, or <paramref name="tries"/> have failed.</summary>
    public static async Task<T> TryAsync<T>(Func<CancellationToken, Task<T>> operation, int tries, CancellationToken cancellation)
    {
        var wait = FirstWait;
        for (var attempt = 1; ; attempt++)
        {
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            limit.CancelAfter(LongestTry);
            try
            {
                return await operation(limit.Token).WaitAsync(limit.Token).ConfigureAwait(false);
            }
            catch (Exception e) when (MayPass(e, cancellation) && attempt < tries)
            {
                await Task.Delay(wait, cancellation).ConfigureAwait(false);
                wait = wait * 2 < LongestWait ? wait * 2 : LongestWait;
            }
        }
    }

    /// <inheritdoc cref="TryAsync{T}"/>
    public static Task TryAsync(Func<CancellationToken, Task> operation, int tries, CancellationToken cancellation) => TryAsync(
        async limit =>
        {
            await operation(limit).ConfigureAwait(false);
            return true;
        },
        tries,
        cancellation);

    /// <summary>Whether a failure is one of servers or network. The client's own timeouts look like cancellations that nobody asked for.</summary>
    public static bool MayPass(Exception e, CancellationToken cancellation) =>
        e is NatsException or IOException or TimeoutException or System.Net.Sockets.SocketException ||
        (e is OperationCanceledException && !cancellation.IsCancellationRequested);
}
