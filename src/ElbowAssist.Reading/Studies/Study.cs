using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Reading.Studies;

/// <summary>All of it for one patient's films: the content of <c>elbowassist/study/1</c>.</summary>
public sealed record Study
{
    /// <summary>Schema identifier of the serialised form.</summary>
    public const string SchemaId = "elbowassist/study/1";

    /// <summary>The program that put the study together.</summary>
    public required ToolIdentity Tool { get; init; }

    /// <summary>Age and sex as the films give them.</summary>
    public required Patient Patient { get; init; }

    /// <summary>The reader's answer to "adult or child", used only where age is unknown.</summary>
    public required Maturity StatedMaturity { get; init; }

    /// <summary>The side the question is about, or unknown.</summary>
    public required Side InjuredSide { get; init; }

    /// <summary>Films, by side, time and view.</summary>
    public required IReadOnlyList<StudyFilm> Films { get; init; }

    /// <summary>What the reader marked.</summary>
    public required ReaderMarks Marks { get; init; }

    /// <summary>The systematic read, or null if none was made.</summary>
    public required WalkRecord? Walk { get; init; }

    /// <summary>What the views say together.</summary>
    public required IReadOnlyList<CrossViewNote> CrossViewNotes { get; init; }

    /// <summary>Differences between the sides.</summary>
    public required IReadOnlyList<SideDifference> SideDifferences { get; init; }

    /// <summary>Differences between two times.</summary>
    public required IReadOnlyList<TimeDifference> TimeDifferences { get; init; }

    /// <summary>Views the study lacks.</summary>
    public required IReadOnlyList<MissingView> MissingViews { get; init; }

    /// <summary>Contradictions.</summary>
    public required IReadOnlyList<StudyConflict> Conflicts { get; init; }

    /// <summary>Every prompt, the most urgent first.</summary>
    public required IReadOnlyList<StudyPrompt> Prompts { get; init; }

    /// <summary>The caution that every output carries.</summary>
    public string CautionText { get; init; } = Caution.Text;

    /// <summary>True while a contradiction keeps everything inside the study.</summary>
    public bool ExportIsStopped => Conflicts.Any(c => c.StopsExport);

    /// <summary>Adult or child.</summary>
    public Maturity Maturity => MaturityOf.Decide(Patient, StatedMaturity);

    /// <summary>The prompts to show now: at most three of those not settled on the walk.</summary>
    public IReadOnlyList<StudyPrompt> VisiblePrompts
    {
        get
        {
            var settled = Walk?.Settled.Select(s => s.Code).ToHashSet(StringComparer.Ordinal) ?? [];
            return [.. Prompts.Where(p => !settled.Contains(p.Code)).Take(ElbowRules.VisibleAtOnce)];
        }
    }
}
