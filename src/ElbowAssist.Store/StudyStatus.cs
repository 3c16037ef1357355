using System.Collections.Immutable;
using ElbowAssist.Geometry;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store.Entries;

namespace ElbowAssist.Store;

/// <summary>What stands of a study after all its entries: worked out from them, never kept.</summary>
public sealed record StudyStatus
{
    /// <summary>Number of the last entry, 0 without one.</summary>
    public long LastNumber { get; init; }

    /// <summary>The question, or null while none was stated.</summary>
    public QuestionStated? Question { get; init; }

    /// <summary>What the reader says of each film.</summary>
    public ImmutableDictionary<string, FilmStated> Films { get; init; } = ImmutableDictionary<string, FilmStated>.Empty;

    /// <summary>The read, or null while none was begun.</summary>
    public WalkRecord? Walk { get; init; }

    /// <summary>Where the reader has put landmarks, by film and landmark; those given back are not among them.</summary>
    public ImmutableDictionary<(string FilmId, string Landmark), Point> Placements { get; init; } =
        ImmutableDictionary<(string FilmId, string Landmark), Point>.Empty;

    /// <summary>Lines laid by hand, by film and name.</summary>
    public ImmutableDictionary<(string FilmId, string Name), OwnLineLaid> OwnLines { get; init; } =
        ImmutableDictionary<(string FilmId, string Name), OwnLineLaid>.Empty;

    /// <summary>Lines of the tool that were shown beside the reader's own, by film and name.</summary>
    public ImmutableHashSet<(string FilmId, string Name)> Compared { get; init; } = [];

    /// <summary>Lines that others laid.</summary>
    public ImmutableList<LineBrought> Brought { get; init; } = [];

    /// <summary>Why the study is on the follow-up list, or null.</summary>
    public string? FollowUp { get; init; }

    /// <summary>What became of it, or null.</summary>
    public string? Outcome { get; init; }

    /// <summary>What stands after entries in their order.</summary>
    public static StudyStatus Of(IEnumerable<StudyEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return entries.Aggregate(new StudyStatus(), (status, entry) => status.After(entry));
    }

    /// <summary>What stands after one entry more.</summary>
    public StudyStatus After(StudyEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return After(entry.Event) with { LastNumber = entry.Number };
    }

    private StudyStatus After(StudyEvent happened) => happened switch
    {
        QuestionStated question => this with { Question = question },
        FilmStated film => this with { Films = Films.SetItem(film.FilmId, Films.TryGetValue(film.FilmId, out var before) ? Over(before, film) : film) },
        WalkBegun begun => this with { Walk = begun.Walk, Compared = [] },
        LandmarkLaid { Move: var move } => WithWalk(w => w with { Moved = w.Moved.Add(move) }) with { Placements = Placements.SetItem((move.FilmId, move.Landmark), move.To) },
        LandmarkGivenBack back => this with { Placements = Placements.Remove((back.FilmId, back.Landmark)) },
        OwnLineLaid line => this with { OwnLines = OwnLines.SetItem((line.FilmId, line.Name), line) },
        LineBrought line => this with { Brought = Brought.Add(line) },
        LineCompared line => this with { Compared = Compared.Add((line.FilmId, line.Name)) },
        Answered { Answer: var answer } => WithWalk(w => w with { Decided = w.Decided.Add(answer) }),
        ProposalsShown { Shown: var shown } => WithWalk(w => w with { Proposed = w.Proposed.Add(shown) }),
        EnhancedOpened { Shown: var shown } => WithWalk(w => w with { Enhanced = w.Enhanced.Add(shown) }),
        PromptDealtWith { Settled: var settled } => WithWalk(w => w with { Settled = w.Settled.Add(settled) }),
        WalkClosed closed => WithWalk(w => w with { ConcludedAt = closed.At }),
        FollowUpAsked asked => this with { FollowUp = asked.Note, Outcome = null },
        OutcomeEntered outcome => this with { Outcome = outcome.Note },
        _ => this,
    };

    private StudyStatus WithWalk(Func<WalkRecord, WalkRecord> change) => Walk is { } walk ? this with { Walk = change(walk) } : this;

    private static FilmStated Over(FilmStated before, FilmStated now) => new(
        now.FilmId,
        now.Side ?? before.Side,
        now.View ?? before.View,
        now.Context ?? before.Context,
        now.FullExtensionAndSupination ?? before.FullExtensionAndSupination);
}
