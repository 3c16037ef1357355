using System.Collections.Concurrent;
using System.Security.Cryptography;

namespace ElbowAssist.Web.Readings;

/// <summary>State of a reading that was asked for without waiting.</summary>
/// <param name="Id">Identifier.</param>
/// <param name="State"><c>waiting</c>, <c>reading</c>, <c>done</c>, <c>failed</c> or <c>cancelled</c>.</param>
/// <param name="Reading">Address of the reading once done, or null.</param>
/// <param name="Message">One sentence where it failed, or null.</param>
/// <param name="Films">Films to read.</param>
/// <param name="FilmsRead">Films read so far.</param>
public sealed record ReadingJob(string Id, string State, string? Reading, string? Message, int Films, int FilmsRead);

/// <summary>Readings under way, each with its events; the ones that ended are kept for a while.</summary>
internal sealed class ReadingJobs(TimeProvider clock)
{
    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(10);

    private readonly ConcurrentDictionary<string, Running> running = new(StringComparer.Ordinal);

    /// <summary>Begins a job.</summary>
    /// <param name="films">Films to read.</param>
    /// <param name="work">Reports how many films are read once it begins and with each, and returns the address of the reading.</param>
    public ReadingJob Begin(int films, Func<Action<int>, CancellationToken, Task<string>> work)
    {
        foreach (var old in running.Where(r => r.Value.EndedAt is { } end && clock.GetUtcNow() - end > Kept))
        {
            running.TryRemove(old.Key, out _);
        }

        var job = new Running(new ReadingJob(RandomNumberGenerator.GetHexString(16, lowercase: true), "waiting", null, null, films, 0));
        running[job.Now.Id] = job;
        _ = RunAsync(job, work);
        return job.Now;
    }

    public ReadingJob? Find(string id) => running.TryGetValue(id, out var job) ? job.Now : null;

    public bool Cancel(string id)
    {
        if (!running.TryGetValue(id, out var job))
        {
            return false;
        }

        job.Stop.Cancel();
        return true;
    }

    /// <summary>The states of a job from now to its end.</summary>
    public async IAsyncEnumerable<ReadingJob> Follow(string id, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        while (running.TryGetValue(id, out var job))
        {
            var (now, changed) = job.Watch();
            yield return now;
            if (now.State is "done" or "failed" or "cancelled")
            {
                yield break;
            }

            await changed.WaitAsync(cancellation).ConfigureAwait(false);
        }
    }

    private async Task RunAsync(Running job, Func<Action<int>, CancellationToken, Task<string>> work)
    {
        try
        {
            var address = await work(read => job.Set(now => now with { State = "reading", FilmsRead = Math.Max(now.FilmsRead, read) }), job.Stop.Token).ConfigureAwait(false);
            job.Set(now => now with { State = "done", Reading = address });
        }
        catch (OperationCanceledException)
        {
            job.Set(now => now with { State = "cancelled" });
        }
        catch (Exception e) when (e is Imaging.Files.UnreadableFilmException or Exchange.ExchangeFormatException)
        {
            job.Set(now => now with { State = "failed", Message = e.Message });
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            job.Set(now => now with { State = "failed", Message = "Something went wrong inside the program." });
        }
        finally
        {
            job.EndedAt = clock.GetUtcNow();
        }
    }

    private sealed class Running(ReadingJob begun)
    {
        private readonly Lock gate = new();
        private TaskCompletionSource changed = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public CancellationTokenSource Stop { get; } = new();

        public DateTimeOffset? EndedAt { get; set; }

        public ReadingJob Now { get; private set; } = begun;

        public (ReadingJob Now, Task Changed) Watch()
        {
            lock (gate)
            {
                return (Now, changed.Task);
            }
        }

        public void Set(Func<ReadingJob, ReadingJob> change)
        {
            lock (gate)
            {
                Now = change(Now);
                changed.SetResult();
                changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
            }
        }
    }
}
