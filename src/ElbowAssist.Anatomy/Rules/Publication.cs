namespace ElbowAssist.Anatomy.Rules;

/// <summary>A publication that a table row rests on.</summary>
/// <param name="Key">Short stable key.</param>
/// <param name="Citation">What a reader needs to find it.</param>
public sealed record Publication(string Key, string Citation)
{
    /// <summary>Several citations in one string, separated by semicolons.</summary>
    public static string Join(IEnumerable<Publication> publications) =>
        string.Join("; ", publications.Select(p => p.Citation));

    /// <summary>The citation.</summary>
    public override string ToString() => Citation;
}
