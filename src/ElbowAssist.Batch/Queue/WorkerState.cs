namespace ElbowAssist.Batch.Queue;

/// <summary>What a worker has done so far. Thread-safe.</summary>
public sealed class WorkerState
{
    private long read;
    private long known;
    private long lost;
    private long troubles;
    private int busy;
    private volatile bool connected;
    private volatile bool draining;

    /// <summary>Films read and stored.</summary>
    public long Read => Interlocked.Read(ref read);

    /// <summary>Films whose result was there already.</summary>
    public long Known => Interlocked.Read(ref known);

    /// <summary>Films given back: not there, changed meanwhile, or not read for a reason that may pass.</summary>
    public long GivenBack => Interlocked.Read(ref lost);

    /// <summary>Times that servers could not be reached or broke off.</summary>
    public long Troubles => Interlocked.Read(ref troubles);

    /// <summary>Films being read now.</summary>
    public int Busy => Volatile.Read(ref busy);

    /// <summary>Whether it has found its queue and reaches a server.</summary>
    public bool Connected => connected;

    /// <summary>Whether it takes no more films and only finishes those in hand.</summary>
    public bool Draining => draining;

    internal void BookRead() => Interlocked.Increment(ref read);

    internal void BookKnown() => Interlocked.Increment(ref known);

    internal void BookGivenBack() => Interlocked.Increment(ref lost);

    internal void BookTrouble() => Interlocked.Increment(ref troubles);

    internal void Enter() => Interlocked.Increment(ref busy);

    internal void Leave() => Interlocked.Decrement(ref busy);

    internal void SetConnected(bool now) => connected = now;

    internal void Drain() => draining = true;
}
