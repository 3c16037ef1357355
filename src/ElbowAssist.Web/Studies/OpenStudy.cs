using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Exchange.Json.Facts;
using ElbowAssist.Geometry;
using ElbowAssist.Imaging.Files;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;
using ElbowAssist.Web.Films;

namespace ElbowAssist.Web.Studies;

/// <summary>
/// A study being read: its films in memory, what stands after all its entries, and readings assembled from both by the
/// geometry that every other output uses.
/// </summary>
internal sealed class OpenStudy : IDisposable
{
    private readonly ReadingAssembler whole;

    // While a landmark is dragged fewer redraws do: the interval is told in two digits, and the last one gets them all.
    private readonly ReadingAssembler quick;

    private readonly IFilmDesk desk;
    private readonly Workers workers;
    private readonly StudyStore store;
    private readonly Lock gate = new();
    private readonly Dictionary<string, OpenFilm> films = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (long Number, FilmReading Reading)> readings = new(StringComparer.Ordinal);

    public OpenStudy(StoredStudy stored, StudyStore store, IFilmDesk desk, Workers workers)
    {
        (Stored, this.store, this.desk, this.workers) = (stored, store, desk, workers);
        whole = new ReadingAssembler(desk.Limits, RedrawOptions.Default);
        quick = new ReadingAssembler(desk.Limits, RedrawOptions.Default with { Draws = 100 });
        Status = StudyStatus.Of(store.Entries(stored.Id));
        foreach (var film in stored.Films)
        {
            Open(film);
        }
    }

    public StoredStudy Stored { get; private set; }

    public StudyStatus Status { get; private set; }

    public IReadOnlyList<OpenFilm> Films
    {
        get
        {
            lock (gate)
            {
                return [.. Stored.Films.Select(f => films[f.Id])];
            }
        }
    }

    public OpenFilm? Film(string id)
    {
        lock (gate)
        {
            return films.GetValueOrDefault(id);
        }
    }

    public StoredFilm Add(string name, byte[] content, string? stated, string? placements)
    {
        lock (gate)
        {
            var film = store.AddFilm(Stored.Id, name, content, stated, placements);
            if (!films.ContainsKey(film.Id))
            {
                Stored = Stored with { Films = [.. Stored.Films, film] };
                Open(film, content);
            }

            return film;
        }
    }

    /// <summary>The DICOM instances among the films, once all are decoded.</summary>
    public async Task<IReadOnlySet<string>> InstancesAsync()
    {
        HashSet<string> instances = new(StringComparer.Ordinal);
        foreach (var film in Films)
        {
            try
            {
                if ((await film.Opened.ConfigureAwait(false)).Dicom is { } source)
                {
                    instances.Add(source.SopInstanceUid);
                }
            }
            catch (Exception e) when (e is UnreadableFilmException or Exchange.ExchangeFormatException)
            {
                // A broken film is no instance; the page names it.
                continue;
            }
        }

        return instances;
    }

    /// <summary>Works out what is to happen from what stands, keeps it, and lets it stand.</summary>
    /// <returns>The refusal, or null.</returns>
    public Reason? Change(string who, Func<StudyStatus, (IReadOnlyList<StudyEvent> Events, Reason? Refusal)> decide)
    {
        lock (gate)
        {
            var (events, refusal) = decide(Status);
            if (refusal is not null || events.Count == 0)
            {
                return refusal;
            }

            Status = store.Append(Stored.Id, who, events).Aggregate(Status, (s, e) => s.After(e));
            return null;
        }
    }

    /// <summary>The reading of a film as it stands, or null while the models work or where the film is unreadable.</summary>
    public FilmReading? Reading(OpenFilm film)
    {
        var status = Status;
        lock (gate)
        {
            if (readings.TryGetValue(film.Stored.Id, out var held) && held.Number == status.LastNumber)
            {
                return held.Reading;
            }
        }

        if (Input(film, status) is not { } input)
        {
            return null;
        }

        var reading = whole.Assemble(input);
        lock (gate)
        {
            readings[film.Stored.Id] = (status.LastNumber, reading);
        }

        return reading;
    }

    /// <summary>The reading with one landmark somewhere else, for as long as it is dragged; nothing is kept.</summary>
    public FilmReading? Try(OpenFilm film, string landmark, Point place)
    {
        var status = Status;
        return Input(film, status with { Placements = status.Placements.SetItem((film.Stored.Id, landmark), place) }) is { } input ? quick.Assemble(input) : null;
    }

    /// <summary>The study as far as its films are read, or null while none is.</summary>
    public Study? Assemble()
    {
        var status = Status;
        StudyFilm[] read =
        [
            .. Films.Select(f => (Film: f, Reading: Reading(f))).Where(f => f.Reading is not null).Select(f => new StudyFilm(
                f.Film.Stored.Id,
                f.Reading!,
                [.. f.Film.Opened.Result.Facts.SideStatements.Select(s => new SideStatement(s.Source, s.Side)),
                    .. Stated(status, f.Film)?.Side is { } side ? [new SideStatement(SideStatement.Reader, side)] : Array.Empty<SideStatement>()])),
        ];
        return read.Length == 0 ? null : StudyAssembler.Assemble(new StudyInput
        {
            Tool = desk.Tool,
            Films = read,
            InjuredSide = status.Question?.InjuredSide ?? Side.Unknown,
            StatedMaturity = status.Question?.Maturity ?? Maturity.Unknown,
            Walk = status.Walk,
        });
    }

    /// <summary>The sentence why a film cannot be read, or null.</summary>
    public static string? Unreadable(OpenFilm film) => film.Opened switch
    {
        { IsFaulted: true, Exception.InnerException: UnreadableFilmException or Exchange.ExchangeFormatException } broken => broken.Exception!.InnerException!.Message,
        { IsFaulted: true } => $"{film.Stored.Name} cannot be read.",
        _ => null,
    };

    public FilmStated? Stated(OpenFilm film) => Stated(Status, film);

    public void Dispose()
    {
        lock (gate)
        {
            foreach (var film in films.Values)
            {
                film.Dispose();
            }
        }
    }

    private static FilmStated? Stated(StudyStatus status, OpenFilm film) => status.Films.GetValueOrDefault(film.Stored.Id);

    private void Open(StoredFilm film, byte[]? content = null)
    {
        var bytes = content ?? store.Content(Stored.Id, film.Id) ?? throw new StoreException("A film of the study is missing.");
        var open = new OpenFilm(film, bytes, desk, workers);
        films[film.Id] = open;
        _ = open.Proposal(View.Unknown);
    }

    private static ReadingInput? Input(OpenFilm film, StudyStatus status)
    {
        var stated = Stated(status, film);
        var proposal = film.Proposal(stated?.View ?? View.Unknown);
        if (!proposal.IsCompletedSuccessfully)
        {
            return null;
        }

        var facts = film.Opened.Result.Facts;
        var question = status.Question;
        var input = proposal.Result;
        var moved = status.Placements.Where(p => p.Key.FilmId == film.Stored.Id).ToDictionary(p => p.Key.Landmark, p => p.Value, StringComparer.Ordinal);
        return input with
        {
            Side = stated?.Side ?? facts.Side,
            Context = stated?.Context ?? facts.Context,
            Patient = new Patient(question?.AgeMonths ?? facts.Patient.AgeMonths, question?.Sex ?? facts.Patient.Sex),
            Landmarks = Laid(input, moved),
            Unusable = [.. input.Unusable.Where(u => !moved.ContainsKey(u.Name))],
            Statements = new ReaderStatements(
                stated?.FullExtensionAndSupination ?? status.Walk?.StandingAnswer("views.ap-extended")?.Choices is [WalkChoices.Yes],
                Maturity: question?.Maturity ?? Maturity.Unknown),
            Marks = status.Walk is { } walk ? WalkMarks.Of(walk) : ReaderMarks.None,
        };
    }

    private static IReadOnlyList<Landmark> Laid(ReadingInput input, Dictionary<string, Point> moved)
    {
        if (moved.Count == 0 || LandmarkSet.Of(input.View.Name) is not { } set)
        {
            return input.Landmarks;
        }

        var byName = input.Landmarks.ToDictionary(l => l.Name, StringComparer.Ordinal);
        return
        [
            .. set.Landmarks.Select(d => moved.TryGetValue(d.Name, out var place)
                ? new Landmark(d.Name, d.Kind, place, null, 1, LandmarkSource.Reader)
                : byName.GetValueOrDefault(d.Name) ?? new Landmark(d.Name, d.Kind, null, null, 0, LandmarkSource.Reader)),
        ];
    }
}
