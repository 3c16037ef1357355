using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json.Facts;

/// <summary>What is taken to be so of a film after all sources were heard, and where they contradict each other.</summary>
/// <param name="RowSpacingMm">Distance between rows, mm, or null.</param>
/// <param name="ColumnSpacingMm">Distance between columns, mm, or null.</param>
/// <param name="SpacingSource">Source of the spacing, <c>none</c> if unknown.</param>
/// <param name="Patient">Age and sex.</param>
/// <param name="Side">Side; unknown if files contradict each other and no option settles it.</param>
/// <param name="Context">Why and when.</param>
/// <param name="View">The stated view, or null to let the image tell.</param>
/// <param name="Conflicts">What contradicts itself, each with a code ending in <c>-contradicted</c> and a sentence.</param>
public sealed record ResolvedFacts(
    double? RowSpacingMm,
    double? ColumnSpacingMm,
    string SpacingSource,
    Patient Patient,
    Side Side,
    FilmContext Context,
    View? View,
    IReadOnlyList<Reason> Conflicts)
{
    private const string Option = "option";

    /// <summary>Every source that states a side, with the side it states.</summary>
    public IReadOnlyList<(string Source, Side Side)> SideStatements { get; init; } = [];

    // An age in years and one in months of the same child differ by less than a year.
    private const int AgeToleranceMonths = 12;

    // Spacings are written with three or four digits.
    private const double SpacingTolerance = 0.005;

    /// <summary>Hears the sources in order of precedence: option, sidecar, DICOM.</summary>
    /// <remarks>
    /// The first source that speaks wins and contradictions are reported. A side contradicted between files counts as
    /// unknown unless an option gives it: which side it is, the reader must settle.
    /// </remarks>
    public static ResolvedFacts From(params IReadOnlyList<FilmFacts> sources)
    {
        ArgumentNullException.ThrowIfNull(sources);
        var conflicts = new List<Reason>();
        var spacing = First<Spacing>(sources, f => f is { RowSpacingMm: { } row, ColumnSpacingMm: { } column } ? new(row, column) : null,
            "pixel spacing", s => string.Create(CultureInfo.InvariantCulture, $"{s.Row} by {s.Column} mm"),
            (a, b) => Close(a.Row, b.Row) && Close(a.Column, b.Column), conflicts);
        var age = First(sources, f => f.AgeMonths, "age", a => string.Create(CultureInfo.InvariantCulture, $"{a} months"),
            (a, b) => Math.Abs(a - b) < AgeToleranceMonths, conflicts);
        var sex = First(sources, f => f.Sex, "sex", Vocabularies.Sex.WordOf, Equals, conflicts);
        var side = First(sources, f => f.Side is Side.Unknown ? null : f.Side, "side", Vocabularies.Side.WordOf, Equals, conflicts);
        var context = First(sources, f => f.Context is FilmContext.Unknown ? null : f.Context, "context", Vocabularies.Context.WordOf, Equals, conflicts);
        var view = First(sources, f => f.View is Anatomy.View.Unknown ? null : f.View, "view", Vocabularies.View.WordOf, Equals, conflicts);
        return new ResolvedFacts(
            spacing.Value?.Row,
            spacing.Value?.Column,
            sources.FirstOrDefault(s => s.Source == spacing.Source)?.SpacingNote ?? spacing.Source ?? "none",
            new Patient(age.Value, sex.Value),
            side.Contradicted && side.Source != Option ? Side.Unknown : side.Value ?? Side.Unknown,
            context.Value ?? FilmContext.Unknown,
            view.Value,
            conflicts)
        {
            SideStatements = [.. sources.Where(f => f.Side is not null and not Anatomy.Side.Unknown).Select(f => (f.Source, f.Side!.Value))],
        };
    }

    private static (T? Value, string? Source, bool Contradicted) First<T>(
        IReadOnlyList<FilmFacts> sources,
        Func<FilmFacts, T?> pick,
        string what,
        Func<T, string> word,
        Func<T, T, bool> agree,
        List<Reason> conflicts)
        where T : struct
    {
        T? taken = null;
        string? from = null;
        var contradicted = false;
        foreach (var source in sources)
        {
            if (pick(source) is not { } value)
            {
                continue;
            }

            if (taken is not { } first)
            {
                (taken, from) = (value, source.Source);
            }
            else if (!agree(first, value))
            {
                contradicted = true;
                var outcome = what == "side" && from != Option ? "the side counts as unknown until --side settles it" : $"{word(first)} is used";
                var code = $"{what.Replace(' ', '-')}-contradicted";
                if (conflicts.All(c => c.Code != code))
                {
                    conflicts.Add(new Reason(code, $"The {from} gives the {what} as {word(first)}, the {source.Source} as {word(value)}; {outcome}."));
                }
            }
        }

        return (taken, from, contradicted);
    }

    private static bool Equals<T>(T a, T b)
        where T : struct, Enum => EqualityComparer<T>.Default.Equals(a, b);

    private static bool Close(double a, double b) => Math.Abs(a - b) <= SpacingTolerance * Math.Max(a, b);

    private readonly record struct Spacing(double Row, double Column);
}
