using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading.Assembly;

/// <summary>An age that stands for the reader's answer "adult" or "child" where limits depend on age.</summary>
internal static class StatedAge
{
    /// <summary>Months at the beginning of the stated class (a child: one year before adolescence), or null if nothing was stated.</summary>
    public static int? TypicalMonths(Maturity stated) => stated switch
    {
        Maturity.Child => MaturityOf.AdolescentFromMonths - 12,
        Maturity.Adolescent => MaturityOf.AdolescentFromMonths,
        Maturity.Adult => MaturityOf.AdultFromMonths,
        _ => null,
    };
}
