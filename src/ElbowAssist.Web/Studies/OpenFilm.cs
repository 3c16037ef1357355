using System.Collections.Concurrent;
using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Imaging;
using ElbowAssist.Imaging.Normalisation;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Store;
using ElbowAssist.Web.Films;

namespace ElbowAssist.Web.Studies;

/// <summary>A film of an open study: decoded at once, with the models' proposals following in their own time.</summary>
internal sealed class OpenFilm : IDisposable
{
    private readonly IFilmDesk desk;
    private readonly Workers workers;
    private readonly CancellationTokenSource closing = new();
    private readonly ConcurrentDictionary<View, Lazy<Task<ReadingInput>>> proposals = new();
    private readonly Lazy<Task<DisplaySamples>> samples;

    public OpenFilm(StoredFilm stored, byte[] content, IFilmDesk desk, Workers workers)
    {
        (Stored, this.desk, this.workers) = (stored, desk, workers);
        Opened = Task.Run(() => desk.Open(content, stored.Name, stored.Stated is { } facts ? [SidecarJson.Read(Encoding.UTF8.GetBytes(facts))] : []));
        samples = new(async () =>
        {
            var film = await Opened.ConfigureAwait(false);
            return await Task.Run(() => DisplaySamples.Of(NormalisedFilm.Of(film.Radiograph), 2048)).ConfigureAwait(false);
        });
    }

    public StoredFilm Stored { get; }

    /// <summary>The decoded film; faulted where it cannot be decoded.</summary>
    public Task<OpenedFilm> Opened { get; }

    /// <summary>Samples for the page to window.</summary>
    public Task<DisplaySamples> Samples => samples.Value;

    /// <summary>The proposals on the film, seen as a view; the models run once for each view.</summary>
    /// <param name="stated">The view the reader states, or unknown to take the one recognised.</param>
    public Task<ReadingInput> Proposal(View stated) => proposals.GetOrAdd(stated, view => new(() => ProposeAsync(view))).Value;

    public void Dispose()
    {
        closing.Cancel();
        closing.Dispose();
    }

    private async Task<ReadingInput> ProposeAsync(View view)
    {
        var film = await Opened.ConfigureAwait(false);
        // The reader sees the film before the models take the processor.
        await Samples.ConfigureAwait(false);
        var seen = view == View.Unknown ? film : film with { Facts = film.Facts with { View = view } };
        // Typed, or a missing text would become empty placements.
        var placements = Stored.Placements is { } text ? Encoding.UTF8.GetBytes(text) : (ReadOnlyMemory<byte>?)null;
        return await workers.RunAsync(c => desk.Propose(seen, placements, c), closing.Token).ConfigureAwait(false);
    }
}
