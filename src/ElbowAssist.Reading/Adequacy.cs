namespace ElbowAssist.Reading;

/// <summary>The checks of image and view and what follows from them.</summary>
/// <param name="Refused">True if the whole film is refused.</param>
/// <param name="Checks">Every check made.</param>
/// <param name="CanCarry">Names of measurements and evidence this film can carry.</param>
/// <param name="CannotCarry">What it cannot carry, with reason codes.</param>
public sealed record Adequacy(
    bool Refused,
    IReadOnlyList<AdequacyCheck> Checks,
    IReadOnlyList<string> CanCarry,
    IReadOnlyList<CannotCarry> CannotCarry);

/// <summary>One check: a figure against a limit.</summary>
/// <param name="Name">Stable name of the check.</param>
/// <param name="Value">The figure, or null if it could not be taken.</param>
/// <param name="Limit">The limit it is held against.</param>
/// <param name="Passed">Whether the film meets the limit.</param>
/// <param name="Reason">Reason code if not.</param>
public sealed record AdequacyCheck(string Name, double? Value, double? Limit, bool Passed, string? Reason);

/// <summary>Something a film cannot carry.</summary>
/// <param name="Name">Measurement or evidence name.</param>
/// <param name="Reasons">Reason codes, at least one.</param>
public sealed record CannotCarry(string Name, IReadOnlyList<string> Reasons);
