namespace ElbowAssist.Anatomy.Rules;

/// <summary>Which version of the read applies.</summary>
public enum Maturity
{
    /// <summary>Neither age nor an answer is known: ask, and apply no age rule.</summary>
    Unknown,

    /// <summary>Growing elbow.</summary>
    Child,

    /// <summary>Twelve to under sixteen: centres fuse during these years, so both tables are shown.</summary>
    Adolescent,

    /// <summary>Grown elbow.</summary>
    Adult,
}

/// <summary>Maturity from age, or from the reader's answer where age is unknown.</summary>
public static class MaturityOf
{
    /// <summary>First month of adolescence. Choice of this project: fusion in the series held begins at 10 to 14 years.</summary>
    public const int AdolescentFromMonths = 12 * 12;

    /// <summary>First month counted as adult. Choice of this project; single centres may stay open to 18 years.</summary>
    public const int AdultFromMonths = 16 * 12;

    /// <summary>Age decides; without an age, <paramref name="stated"/>.</summary>
    public static Maturity Decide(Patient patient, Maturity stated = Maturity.Unknown)
    {
        ArgumentNullException.ThrowIfNull(patient);
        return patient.AgeMonths switch
        {
            null => stated,
            < AdolescentFromMonths => Maturity.Child,
            < AdultFromMonths => Maturity.Adolescent,
            _ => Maturity.Adult,
        };
    }
}
