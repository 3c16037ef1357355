namespace ElbowAssist.Web.Films;

/// <summary>The few that read films at the same time; whoever comes later waits, and too many are turned away.</summary>
internal sealed class Workers(ServiceOptions options) : IDisposable
{
    private readonly SemaphoreSlim free = new(options.Workers);
    private int waiting;

    /// <summary>True if one more may wait; the caller must then run.</summary>
    public bool HasRoom => Volatile.Read(ref waiting) < options.Waiting + options.Workers;

    /// <summary>Runs work on a worker once one is free.</summary>
    /// <exception cref="OperationCanceledException">Cancelled while waiting or working.</exception>
    public async Task<T> RunAsync<T>(Func<CancellationToken, T> work, CancellationToken cancellation)
    {
        Interlocked.Increment(ref waiting);
        try
        {
            await free.WaitAsync(cancellation).ConfigureAwait(false);
            try
            {
                return await Task.Run(() => work(cancellation), cancellation).ConfigureAwait(false);
            }
            finally
            {
                free.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref waiting);
        }
    }

    public void Dispose() => free.Dispose();
}
