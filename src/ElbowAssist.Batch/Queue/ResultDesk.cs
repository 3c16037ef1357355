using ElbowAssist.Batch.Results;
using ElbowAssist.Batch.Running;

namespace ElbowAssist.Batch.Queue;

/// <summary>Takes in results, from whichever side they come first, and makes room for the next film. Thread-safe.</summary>
internal sealed class ResultDesk(ResultsFile results, Tally tally, int window, FilmQueue queue) : IDisposable
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, List<Submitted>> waiting = new(StringComparer.Ordinal);
    private readonly SemaphoreSlim room = new(window);
    private readonly SemaphoreSlim came = new(0);

    /// <summary>Whether no film waits.</summary>
    public bool IsEmpty
    {
        get
        {
            lock (gate)
            {
                return waiting.Count == 0;
            }
        }
    }

    public bool Holds(string content, string film) => results.Holds(content, film);

    /// <summary>Waits for room and then for the film's result. Films of equal content wait together.</summary>
    public async Task EnterAsync(Submitted film, CancellationToken cancellation)
    {
        await room.WaitAsync(cancellation).ConfigureAwait(false);
        lock (gate)
        {
            if (!waiting.TryGetValue(film.Content, out var films))
            {
                waiting[film.Content] = films = [];
            }

            films.Add(film);
        }
    }

    /// <summary>The films that wait.</summary>
    public IReadOnlyList<Submitted> Waiting()
    {
        lock (gate)
        {
            return [.. waiting.Values.SelectMany(w => w)];
        }
    }

    /// <summary>Writes a result for every film that waits for it.</summary>
    public async Task TakeAsync(string content, FilmResult result, CancellationToken cancellation)
    {
        var films = Leave(content);
        foreach (var film in films)
        {
            if (results.Add(content, film.Film.Name, result))
            {
                tally.Now();
            }
        }

        await MakeRoomAsync(content, films, cancellation).ConfigureAwait(false);
    }

    /// <summary>Waits no longer for a result that does not come.</summary>
    /// <param name="content">The film.</param>
    /// <param name="why">Says of each film of that content why.</param>
    /// <param name="cancellation">Cancels.</param>
    public async Task GiveUpAsync(string content, Action<Tally, string> why, CancellationToken cancellation)
    {
        var films = Leave(content);
        films.ForEach(f => why(tally, f.Film.Name));
        await MakeRoomAsync(content, films, cancellation).ConfigureAwait(false);
    }

    /// <summary>Waits until something was taken in, or a second.</summary>
    public Task SomethingCameAsync(CancellationToken cancellation) => came.WaitAsync(TimeSpan.FromSeconds(1), cancellation);

    public void Dispose()
    {
        room.Dispose();
        came.Dispose();
    }

    // Empty for a result of another batch, and for one that was taken in before.
    private List<Submitted> Leave(string content)
    {
        lock (gate)
        {
            return waiting.Remove(content, out var films) ? films : [];
        }
    }

    private async Task MakeRoomAsync(string content, List<Submitted> films, CancellationToken cancellation)
    {
        if (films.Count == 0)
        {
            return;
        }

        room.Release(films.Count);
        came.Release();
        if (!films.Exists(f => f.Stored))
        {
            return;
        }

        try
        {
            await Patiently.OnceAsync(c => queue.DropFilmAsync(content, c), cancellation).ConfigureAwait(false);
        }
        catch (Exception e) when (Patiently.MayPass(e, cancellation))
        {
            // The bytes stay until the next batch with this film; nothing depends on it.
        }
    }
}
