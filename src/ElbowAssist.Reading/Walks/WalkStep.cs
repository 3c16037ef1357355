using ElbowAssist.Anatomy;

namespace ElbowAssist.Reading.Walks;

/// <summary>Which elbows a step or question is for.</summary>
public enum WalkVersion
{
    /// <summary>Both.</summary>
    Both,

    /// <summary>Grown elbow.</summary>
    Adult,

    /// <summary>Growing elbow.</summary>
    Child,
}

/// <summary>What a step is about; steps come in this order.</summary>
public enum WalkTopic
{
    /// <summary>History and question.</summary>
    History,

    /// <summary>Views and what they carry.</summary>
    Views,

    /// <summary>Alignment.</summary>
    Alignment,

    /// <summary>Effusion.</summary>
    Effusion,

    /// <summary>Each cortex in a fixed order.</summary>
    Cortex,

    /// <summary>Growth centres.</summary>
    GrowthCentres,

    /// <summary>Places most often missed, a second time.</summary>
    SecondLook,

    /// <summary>What the reader marks, and the conclusion.</summary>
    Conclusion,
}

/// <summary>A choice a reader can make.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Label">Words on page and report.</param>
public sealed record WalkChoice(string Code, string Label);

/// <summary>
/// A square of the film to look at, original and enhanced beside each other at equal zoom; the enhanced one only after
/// the reader's own call.
/// </summary>
/// <param name="View">The view to cut it from.</param>
/// <param name="Around">Landmarks whose mean is the centre; those without a place are left out.</param>
/// <param name="SideInW">Side of the square in W, the width of the humeral shaft.</param>
public sealed record WalkCrop(View View, IReadOnlyList<string> Around, double SideInW);

/// <summary>One question.</summary>
/// <param name="Id">Stable identifier, unique in the walk.</param>
/// <param name="Question">The question.</param>
/// <param name="Choices">Choices; empty where only a note is asked for.</param>
/// <param name="AllowsSeveral">True if several choices may be taken at once.</param>
/// <param name="Version">Elbows it is for.</param>
/// <param name="Crops">Where to look, if at a place on the film.</param>
public sealed record WalkItem(
    string Id,
    string Question,
    IReadOnlyList<WalkChoice> Choices,
    bool AllowsSeveral,
    WalkVersion Version,
    IReadOnlyList<WalkCrop> Crops);

/// <summary>One step.</summary>
/// <param name="Topic">What it is about.</param>
/// <param name="Title">Heading.</param>
/// <param name="Items">Questions in order.</param>
public sealed record WalkStep(WalkTopic Topic, string Title, IReadOnlyList<WalkItem> Items);
