namespace ElbowAssist.Batch.Running;

/// <summary>
/// Rate of a batch over its last minute or so, and the time left. Counts on a clock that only runs forward: setting the
/// time of day changes nothing. Thread-safe.
/// </summary>
public sealed class Pace(TimeProvider clock)
{
    private const int MostSteps = 64;
    private static readonly TimeSpan Step = TimeSpan.FromSeconds(1);

    private readonly Lock gate = new();
    private readonly Queue<(long Time, int Done)> steps = new([(clock.GetTimestamp(), 0)]);
    private (long Time, int Done) last = (clock.GetTimestamp(), 0);
    private int done;
    private int before;
    private int? films;

    /// <summary>States how many films there are.</summary>
    public void Counted(int count)
    {
        lock (gate)
        {
            films = count;
        }
    }

    /// <summary>Books a result that was there before.</summary>
    public void Skip()
    {
        lock (gate)
        {
            before++;
        }
    }

    /// <summary>Books a result.</summary>
    public void Book()
    {
        lock (gate)
        {
            done++;
            var now = clock.GetTimestamp();
            if (clock.GetElapsedTime(last.Time, now) >= Step)
            {
                last = (now, done);
                steps.Enqueue(last);
                if (steps.Count > MostSteps)
                {
                    steps.Dequeue();
                }
            }
        }
    }

    /// <summary>How far it is now.</summary>
    public BatchProgress Now()
    {
        lock (gate)
        {
            var (since, then) = steps.Peek();
            var seconds = clock.GetElapsedTime(since).TotalSeconds;
            double? rate = done > then && seconds > 0 ? (done - then) / seconds : null;
            var left = films - before - done;
            return new BatchProgress(films, before + done, rate, rate is { } r && left is { } n ? TimeSpan.FromSeconds(Math.Max(0, n) / r) : null);
        }
    }
}
