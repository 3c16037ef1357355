using ElbowAssist.Phantom.Injury;
using ElbowAssist.Phantom.Pose;

namespace ElbowAssist.Phantom;

/// <summary>What may be drawn when simulating.</summary>
public sealed record SimulationOptions
{
    /// <summary>Youngest age, years.</summary>
    public double FromAgeYears { get; init; } = 0.5;

    /// <summary>Oldest age, years.</summary>
    public double ToAgeYears { get; init; } = 90;

    /// <summary>Share of injured elbows where <see cref="Injuries"/> is empty.</summary>
    public double InjuredShare { get; init; } = 0.4;

    /// <summary>If not empty, every elbow has one of these.</summary>
    public IReadOnlyList<InjuryKind> Injuries { get; init; } = [];

    /// <summary>How well the films are positioned.</summary>
    public Adequacy Adequacy { get; init; } = Adequacy.Mixed;

    /// <summary>Half of the films show the mirror image of the other side; false keeps every film as taken.</summary>
    public bool AnyMirror { get; init; }

    /// <summary>True to turn films in their plane as they come; false keeps the humerus near upright.</summary>
    public bool AnyTurn { get; init; }
}
