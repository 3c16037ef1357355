using System.Diagnostics;
using NATS.Client.Core;

namespace ElbowAssist.Batch.Queue;

/// <summary>Tries again while servers are away or elect a leader.</summary>
internal static class Patiently
{
    /// <summary>An answer that was lost with its server is waited for no longer than this.</summary>
    public static readonly TimeSpan LongestTry = TimeSpan.FromSeconds(20);

    private static readonly TimeSpan FirstWait = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(5);

    /// <summary>Runs an operation that may be run again until it succeeds; what still fails after <paramref name="outage"/> is thrown.</summary>
    public static async Task<T> TryAsync<T>(Func<CancellationToken, Task<T>> operation, TimeSpan outage, CancellationToken cancellation)
    {
        var started = Stopwatch.GetTimestamp();
        var wait = FirstWait;
        while (true)
        {
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            limit.CancelAfter(LongestTry);
            try
            {
                return await operation(limit.Token).WaitAsync(limit.Token).ConfigureAwait(false);
            }
            catch (Exception e) when (MayPass(e, cancellation) && Stopwatch.GetElapsedTime(started) < outage)
            {
                await Task.Delay(wait, cancellation).ConfigureAwait(false);
                wait = wait * 2 < LongestWait ? wait * 2 : LongestWait;
            }
        }
    }

    /// <inheritdoc cref="TryAsync{T}"/>
    public static Task TryAsync(Func<CancellationToken, Task> operation, TimeSpan outage, CancellationToken cancellation) => TryAsync(
        async limit =>
        {
            await operation(limit).ConfigureAwait(false);
            return true;
        },
        outage,
        cancellation);

    /// <summary>Runs an operation once, for no longer than an answer is waited for.</summary>
    public static Task<T> OnceAsync<T>(Func<CancellationToken, Task<T>> operation, CancellationToken cancellation) => TryAsync(operation, TimeSpan.Zero, cancellation);

    /// <inheritdoc cref="OnceAsync{T}"/>
    public static Task OnceAsync(Func<CancellationToken, Task> operation, CancellationToken cancellation) => TryAsync(operation, TimeSpan.Zero, cancellation);

    /// <summary>Whether a failure is one of servers or network. The client's own timeouts look like cancellations that nobody asked for.</summary>
    public static bool MayPass(Exception e, CancellationToken cancellation) =>
        e is NatsException or IOException or TimeoutException or System.Net.Sockets.SocketException ||
        (e is OperationCanceledException && !cancellation.IsCancellationRequested);
}
