using ElbowAssist.Batch.Films;

namespace ElbowAssist.Batch.Queue;

/// <summary>A film that waits for its result. Only one thread at a time looks after it.</summary>
internal sealed class Submitted(ListedFilm film, string content)
{
    public ListedFilm Film { get; } = film;

    public string Content { get; } = content;

    /// <summary>How often it was put into the queue.</summary>
    public int Rounds { get; set; }

    /// <summary>Where its message stands in the queue.</summary>
    public ulong Place { get; set; }

    /// <summary>Whether its bytes lie on the server.</summary>
    public bool Stored { get; set; }

    /// <summary>When it was last put there or looked after, on a clock that only runs forward.</summary>
    public long Since { get; set; }
}
