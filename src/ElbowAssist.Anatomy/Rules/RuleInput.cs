namespace ElbowAssist.Anatomy.Rules;

/// <summary>What the rules look at: one film with its measurements, and what the reader has marked so far.</summary>
public sealed record RuleInput
{
    /// <summary>Age and sex, if known.</summary>
    public required Patient Patient { get; init; }

    /// <summary>The view the measurements were taken on.</summary>
    public required View View { get; init; }

    /// <summary>Why the film was taken.</summary>
    public FilmContext Context { get; init; }

    /// <summary>The reader's answer to "adult or child", used only where age is unknown.</summary>
    public Maturity StatedMaturity { get; init; }

    /// <summary>Measurements of the film; withheld ones may be left out.</summary>
    public IReadOnlyList<RuleMeasurement> Measurements { get; init; } = [];

    /// <summary>What the reader has marked.</summary>
    public ReaderMarks Marks { get; init; } = ReaderMarks.None;

    internal Maturity Maturity => MaturityOf.Decide(Patient, StatedMaturity);

    internal RuleMeasurement? Find(string name) =>
        Measurements.FirstOrDefault(m => m.Name == name && !m.IsHeldBack);
}
