using ElbowAssist.Store;
using ElbowAssist.Web.Films;

namespace ElbowAssist.Web.Studies;

/// <summary>The studies held in memory: a few, the ones used last.</summary>
internal sealed class OpenStudies(StudyStore store, IFilmDesk desk, Workers workers) : IDisposable
{
    // A film takes some tens of megabytes; four studies of four films stay within a gigabyte.
    private const int Held = 4;

    private readonly Lock gate = new();
    private readonly LinkedList<OpenStudy> open = new();

    /// <summary>The study, opened if it is not, or null.</summary>
    public OpenStudy? Find(string id)
    {
        lock (gate)
        {
            var node = open.First;
            while (node is not null && node.Value.Stored.Id != id)
            {
                node = node.Next;
            }

            if (node is not null)
            {
                open.Remove(node);
                open.AddFirst(node);
                return node.Value;
            }

            return store.Find(id) is { } stored ? Hold(new OpenStudy(stored, store, desk, workers)) : null;
        }
    }

    /// <summary>Deletes a study completely.</summary>
    public bool Delete(string id)
    {
        lock (gate)
        {
            foreach (var study in open.Where(s => s.Stored.Id == id).ToList())
            {
                open.Remove(study);
                study.Dispose();
            }

            return store.Delete(id);
        }
    }

    public void Dispose()
    {
        foreach (var study in open)
        {
            study.Dispose();
        }
    }

    private OpenStudy Hold(OpenStudy study)
    {
        open.AddFirst(study);
        while (open.Count > Held)
        {
            open.Last!.Value.Dispose();
            open.RemoveLast();
        }

        return study;
    }
}
