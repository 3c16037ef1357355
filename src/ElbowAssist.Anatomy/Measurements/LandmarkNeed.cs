namespace ElbowAssist.Anatomy.Measurements;

/// <summary>Landmarks without which a construction is not laid.</summary>
/// <param name="Landmarks">Names.</param>
/// <param name="AtLeast">How many of them must be on the film.</param>
/// <param name="Reason">Reason code where they are not.</param>
public sealed record LandmarkNeed(IReadOnlyList<string> Landmarks, int AtLeast, string Reason)
{
    /// <summary>All of some landmarks.</summary>
    public static LandmarkNeed All(string reason, params string[] landmarks) => new(landmarks, landmarks?.Length ?? 0, reason);

    /// <summary>At least some of a numbered family.</summary>
    public static LandmarkNeed Some(string reason, Func<int, string> family, int from, int to, int atLeast)
    {
        ArgumentNullException.ThrowIfNull(family);
        return new([.. Enumerable.Range(from, to - from + 1).Select(family)], atLeast, reason);
    }

    /// <summary>All of a stretch of a numbered family.</summary>
    public static LandmarkNeed Range(string reason, Func<int, string> family, int from, int to) =>
        Some(reason, family, from, to, to - from + 1);
}
