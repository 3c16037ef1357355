namespace ElbowAssist.Models.Folders;

/// <summary>The classes of a view model.</summary>
public static class ViewClasses
{
    /// <summary>Lateral view of an elbow.</summary>
    public const string Lateral = "lateral";

    /// <summary>Antero-posterior view of an elbow.</summary>
    public const string Ap = "ap";

    /// <summary>Oblique view of an elbow.</summary>
    public const string Oblique = "oblique";

    /// <summary>A radiograph of something else.</summary>
    public const string NotAnElbow = "not-an-elbow";

    /// <summary>No radiograph.</summary>
    public const string NotARadiograph = "not-a-radiograph";

    /// <summary>All classes.</summary>
    public static IReadOnlyList<string> All { get; } = [Lateral, Ap, Oblique, NotAnElbow, NotARadiograph];
}
