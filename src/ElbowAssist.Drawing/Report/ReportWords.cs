using System.Globalization;
using ElbowAssist.Anatomy;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Drawing.Report;

/// <summary>Words shared by page and dictation.</summary>
internal static class ReportWords
{
    public static string View(View view) => view switch
    {
        Anatomy.View.Lateral => "lateral",
        Anatomy.View.Ap => "AP",
        Anatomy.View.Oblique => "oblique",
        _ => "view not recognised",
    };

    public static string Side(Side side) => side switch
    {
        Anatomy.Side.Left => "left",
        Anatomy.Side.Right => "right",
        _ => "side not stated",
    };

    public static string Context(FilmContext context) => context switch
    {
        FilmContext.Acute => "acute",
        FilmContext.AfterReduction => "after reduction",
        FilmContext.Cast => "in a cast",
        FilmContext.Fixation => "with metal",
        FilmContext.FollowUp => "follow-up",
        _ => "occasion not stated",
    };

    public static string Patient(Patient patient)
    {
        var age = patient.AgeMonths switch
        {
            null => "age not stated",
            < 24 and { } months => string.Create(CultureInfo.InvariantCulture, $"{months} months"),
            < 216 and { } months when months % 12 != 0 => string.Create(CultureInfo.InvariantCulture, $"{months / 12} years {months % 12} months"),
            { } months => string.Create(CultureInfo.InvariantCulture, $"{months / 12} years"),
        };
        return age + ", " + patient.Sex switch { Sex.Female => "female", Sex.Male => "male", _ => "sex not stated" };
    }

    public static string Film(StudyFilm film) => $"{Sentence(Side(film.Side))}, {View(film.View)}, {Context(film.Context)}";

    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    public static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss 'UTC'", CultureInfo.InvariantCulture);

    public static string Clock(DateTimeOffset at) => at.UtcDateTime.ToString("HH:mm:ss", CultureInfo.InvariantCulture);
}
