namespace ElbowAssist.Anatomy;

/// <summary>Sex as the growth tables use it.</summary>
public enum Sex
{
    /// <summary>Female.</summary>
    Female,

    /// <summary>Male.</summary>
    Male,
}

/// <summary>What is known of the patient; never more than the rules need.</summary>
/// <param name="AgeMonths">Age in completed months, or null if unknown.</param>
/// <param name="Sex">Sex, or null if unknown.</param>
public sealed record Patient(int? AgeMonths, Sex? Sex)
{
    /// <summary>Nothing known.</summary>
    public static Patient Unknown { get; } = new(null, null);
}
