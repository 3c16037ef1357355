namespace ElbowAssist.Phantom.Injury;

/// <summary>Stable codes of injuries, as files and options name them.</summary>
public static class InjuryCodes
{
    private static readonly Dictionary<InjuryKind, string> Codes = new()
    {
        [InjuryKind.SupracondylarExtension] = "supracondylar-extension",
        [InjuryKind.SupracondylarFlexion] = "supracondylar-flexion",
        [InjuryKind.LateralCondyle] = "lateral-condyle",
        [InjuryKind.DistalPhysealSeparation] = "distal-physeal-separation",
        [InjuryKind.MedialEpicondyle] = "medial-epicondyle",
        [InjuryKind.RadialNeck] = "radial-neck",
        [InjuryKind.RadialHead] = "radial-head",
        [InjuryKind.RadialHeadAnterior] = "radial-head-anterior",
        [InjuryKind.RadialHeadPosterior] = "radial-head-posterior",
        [InjuryKind.RadialHeadLateral] = "radial-head-lateral",
        [InjuryKind.RadialHeadAnteriorWithUlna] = "radial-head-anterior-with-ulna",
        [InjuryKind.Olecranon] = "olecranon",
        [InjuryKind.Coronoid] = "coronoid",
        [InjuryKind.CapitellarShear] = "capitellar-shear",
        [InjuryKind.ElbowDislocation] = "elbow-dislocation",
        [InjuryKind.OldSupracondylar] = "old-supracondylar",
        [InjuryKind.EffusionOnly] = "effusion-only",
    };

    /// <summary>Every code.</summary>
    public static IReadOnlyCollection<string> All => Codes.Values;

    /// <summary>Code of a kind.</summary>
    public static string Of(InjuryKind kind) => Codes[kind];

    /// <summary>Kind of a code, or null if there is none.</summary>
    public static InjuryKind? Parse(string code) =>
        Codes.FirstOrDefault(c => string.Equals(c.Value, code, StringComparison.Ordinal)) is { Value: not null } found ? found.Key : null;
}
