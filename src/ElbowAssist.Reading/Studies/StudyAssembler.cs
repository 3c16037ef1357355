using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Reading.Studies;

/// <summary>What goes into a study.</summary>
public sealed record StudyInput
{
    /// <summary>The program that puts the study together.</summary>
    public required ToolIdentity Tool { get; init; }

    /// <summary>Films of one patient; identifiers must differ.</summary>
    public required IReadOnlyList<StudyFilm> Films { get; init; }

    /// <summary>The side the question is about. Where unknown and all films are of one side, that one.</summary>
    public Side InjuredSide { get; init; }

    /// <summary>The reader's answer to "adult or child", used only where age is unknown.</summary>
    public Maturity StatedMaturity { get; init; }

    /// <summary>Marks made outside a walk; a walk's own marks take their place.</summary>
    public ReaderMarks Marks { get; init; } = ReaderMarks.None;

    /// <summary>The walk, or null.</summary>
    public WalkRecord? Walk { get; init; }

    /// <summary>Sides the reader has settled, by film identifier.</summary>
    public IReadOnlyDictionary<string, Side> SettledSides { get; init; } = new Dictionary<string, Side>();
}

/// <summary>Films in, study out.</summary>
public static class StudyAssembler
{
    /// <summary>Puts a study together.</summary>
    /// <exception cref="ArgumentException">No film, or two films of one identifier.</exception>
    public static Study Assemble(StudyInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.Films.Count == 0)
        {
            throw new ArgumentException("A study needs at least one film.", nameof(input));
        }

        if (input.Films.DistinctBy(f => f.Id).Count() != input.Films.Count)
        {
            throw new ArgumentException("Two films of a study have the same identifier.", nameof(input));
        }

        StudyFilm[] films =
        [
            .. input.Films.Select(f => Settled(f, input.SettledSides)).OrderBy(f => f.Side).ThenBy(f => Occasion.Of(f.Context)).ThenBy(f => f.View).ThenBy(f => f.Id, StringComparer.Ordinal),
        ];
        var patient = PatientOf(films);
        var marks = input.Walk is null ? input.Marks : WalkMarks.Of(input.Walk);
        var injured = input.InjuredSide == Side.Unknown ? OnlySide(films) : input.InjuredSide;
        var differences = SideComparison.Between(films, injured);
        return new Study
        {
            Tool = input.Tool,
            Patient = patient,
            StatedMaturity = input.StatedMaturity,
            InjuredSide = injured,
            Films = films,
            Marks = marks,
            Walk = input.Walk,
            CrossViewNotes = [.. CrossViewCheck.Of(films)],
            SideDifferences = differences,
            TimeDifferences = [.. TimeComparison.Of(films)],
            MissingViews = [.. ViewsLacking.In(films, injured, marks)],
            Conflicts = [.. StudyConflicts.In(films)],
            Prompts = StudyPrompts.Of(films, patient, input.StatedMaturity, marks, differences),
        };
    }

    private static StudyFilm Settled(StudyFilm film, IReadOnlyDictionary<string, Side> sides) => sides.TryGetValue(film.Id, out var side)
        ? film with { SideStatements = [.. film.SideStatements, new(SideStatement.Reader, side)] }
        : film;

    private static Patient PatientOf(StudyFilm[] films)
    {
        var acute = films.OrderBy(f => Occasion.Of(f.Context)).ToList();
        return new(
            acute.Select(f => f.Reading.Patient.AgeMonths).FirstOrDefault(a => a is not null),
            acute.Select(f => f.Reading.Patient.Sex).FirstOrDefault(s => s is not null));
    }

    private static Side OnlySide(StudyFilm[] films) =>
        films.Select(f => f.Side).Distinct().ToArray() is [var only] ? only : Side.Unknown;
}
