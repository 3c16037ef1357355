namespace ElbowAssist.Anatomy.Rules.Growth;

/// <summary>The six ossification centres of the elbow, in the usual order of appearance.</summary>
public enum GrowthCentre
{
    /// <summary>Capitellum.</summary>
    Capitellum,

    /// <summary>Radial head.</summary>
    RadialHead,

    /// <summary>Medial (internal) epicondyle.</summary>
    MedialEpicondyle,

    /// <summary>Trochlea.</summary>
    Trochlea,

    /// <summary>Olecranon.</summary>
    Olecranon,

    /// <summary>Lateral (external) epicondyle.</summary>
    LateralEpicondyle,
}

/// <summary>The reader's mark for a centre.</summary>
public enum CentreMark
{
    /// <summary>Not looked for, or not to be judged on these films (view missing, cropped, under a cast).</summary>
    NotChecked,

    /// <summary>Seen as a separate centre.</summary>
    Seen,

    /// <summary>Looked for and not seen.</summary>
    NotSeen,

    /// <summary>Joined to the shaft.</summary>
    Fused,
}

/// <summary>How a mark sits with the published series.</summary>
public enum GrowthVerdict
{
    /// <summary>No mark, or no age.</summary>
    NotJudged,

    /// <summary>As every series has it.</summary>
    Expected,

    /// <summary>Within at least one series.</summary>
    Possible,

    /// <summary>Outside every series.</summary>
    Unexpected,
}

/// <summary>Trade names of the centres.</summary>
public static class GrowthCentreNames
{
    /// <summary>The centre's name within a sentence.</summary>
    public static string InWords(this GrowthCentre centre) => centre switch
    {
        GrowthCentre.Capitellum => "capitellum",
        GrowthCentre.RadialHead => "radial head",
        GrowthCentre.MedialEpicondyle => "medial epicondyle",
        GrowthCentre.Trochlea => "trochlea",
        GrowthCentre.Olecranon => "olecranon",
        GrowthCentre.LateralEpicondyle => "lateral epicondyle",
        _ => throw new ArgumentOutOfRangeException(nameof(centre)),
    };
}
