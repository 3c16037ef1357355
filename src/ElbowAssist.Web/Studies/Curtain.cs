using ElbowAssist.Reading;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;

namespace ElbowAssist.Web.Studies;

/// <summary>
/// What of the tool's may leave the service: nothing on a topic before the reader's own answers to it, and of alignment
/// a single line where the reader has laid that line first. What may not be shown is not sent.
/// </summary>
internal static class Curtain
{
    /// <summary>Lines a reader can lay, and the beginnings of the names of the tool's measurements they stand beside.</summary>
    public static readonly IReadOnlyDictionary<string, string> Lines = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["anterior-humeral-line"] = "anterior-humeral-line.",
        ["radiocapitellar-line"] = "radiocapitellar-line.",
    };

    public static bool Shows(StudyStatus status, WalkTopic topic) => status.Walk?.ToolVisible(topic) == true;

    /// <summary>The lines shown beside the reader's own on a film while the rest of alignment is not.</summary>
    public static IReadOnlyList<string> Compared(StudyStatus status, string filmId) =>
        [.. status.Compared.Where(c => c.FilmId == filmId).Select(c => c.Name).Order(StringComparer.Ordinal)];

    /// <summary>The part of a reading that has to do with alignment and may be shown, or null if nothing may.</summary>
    public static FilmReading? Alignment(FilmReading reading, StudyStatus status, string filmId)
    {
        if (Shows(status, WalkTopic.Alignment))
        {
            return reading;
        }

        string[] prefixes = [.. Compared(status, filmId).Select(n => Lines[n])];
        if (prefixes.Length == 0)
        {
            return null;
        }

        bool Shown(string name) => prefixes.Any(p => name.StartsWith(p, StringComparison.Ordinal));
        return reading with
        {
            Measurements = [.. reading.Measurements.Where(m => Shown(m.Name))],
            Lines = [.. reading.Lines.Where(l => Shown(l.Name))],
            Circles = [.. reading.Circles.Where(c => c.Name == "capitellum")],
            Evidence = [],
            Prompts = [],
        };
    }

    /// <summary>Whether report and export may be made: once the read is closed, or where nothing is held back.</summary>
    public static bool ReportMayBeMade(StudyStatus status) =>
        status.Walk is { } walk && (walk.ConcludedAt is not null || walk.ProposalsVisibleFromStart);

    /// <summary>The question of the walk that a line answers.</summary>
    public static string? QuestionOf(string line, Anatomy.View view) => (line, view) switch
    {
        ("anterior-humeral-line", _) => "alignment.anterior-humeral-line",
        ("radiocapitellar-line", Anatomy.View.Lateral) => "alignment.radiocapitellar-lateral",
        ("radiocapitellar-line", Anatomy.View.Ap) => "alignment.radiocapitellar-ap",
        _ => null,
    };
}
