namespace ElbowAssist.Batch.Running;

/// <summary>What became of the films of a run so far. Thread-safe.</summary>
internal sealed class Tally(Pace pace)
{
    private const int MostNames = 100;

    private readonly Lock gate = new();
    private readonly List<string> notOpened = [];
    private readonly List<string> changed = [];
    private readonly List<string> givenUp = [];
    private int films;
    private int before;
    private int now;

    public void Listed() => Interlocked.Increment(ref films);

    public void Before()
    {
        Interlocked.Increment(ref before);
        pace.Skip();
    }

    public void Now()
    {
        Interlocked.Increment(ref now);
        pace.Book();
    }

    public void NotOpened(string film) => Name(notOpened, film);

    public void Changed(string film) => Name(changed, film);

    public void GivenUp(string film) => Name(givenUp, film);

    public BatchOutcome Outcome(bool stopped)
    {
        lock (gate)
        {
            return new BatchOutcome { Films = films, Before = before, Now = now, NotOpened = [.. notOpened], Changed = [.. changed], GivenUp = [.. givenUp], Stopped = stopped };
        }
    }

    private void Name(List<string> names, string film)
    {
        lock (gate)
        {
            if (names.Count < MostNames)
            {
                names.Add(film);
            }
        }
    }
}
