using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading.Walks;

/// <summary>Codes and trade names of suspected injuries.</summary>
public static class InjuryWords
{
    private static readonly (SuspectedInjury Injury, string Code, string Label)[] Words =
    [
        (SuspectedInjury.Supracondylar, "supracondylar", "supracondylar fracture"),
        (SuspectedInjury.LateralCondyle, "lateral-condyle", "lateral condyle fracture"),
        (SuspectedInjury.MedialEpicondyle, "medial-epicondyle", "medial epicondyle avulsion"),
        (SuspectedInjury.PhysealSeparation, "physeal-separation", "separation of the distal humeral physis"),
        (SuspectedInjury.RadialHeadOrNeck, "radial-head-or-neck", "radial head or neck fracture"),
        (SuspectedInjury.RadialHeadDislocation, "radial-head-dislocation", "dislocation of the radial head"),
        (SuspectedInjury.UlnarShaft, "ulnar-shaft", "ulnar fracture or bow"),
        (SuspectedInjury.Olecranon, "olecranon", "olecranon fracture"),
        (SuspectedInjury.Coronoid, "coronoid", "coronoid fracture"),
        (SuspectedInjury.ElbowDislocation, "elbow-dislocation", "dislocation of the elbow"),
    ];

    /// <summary>Stable code.</summary>
    public static string CodeOf(SuspectedInjury injury) => Words.First(w => w.Injury == injury).Code;

    /// <summary>Trade name.</summary>
    public static string LabelOf(SuspectedInjury injury) => Words.First(w => w.Injury == injury).Label;

    /// <summary>The injury of a code.</summary>
    public static bool TryParse(string code, out SuspectedInjury injury)
    {
        var index = Array.FindIndex(Words, w => w.Code == code);
        injury = index < 0 ? default : Words[index].Injury;
        return index >= 0;
    }
}
