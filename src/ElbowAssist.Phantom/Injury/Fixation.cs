namespace ElbowAssist.Phantom.Injury;

/// <summary>Metal left by treatment.</summary>
public enum Fixation
{
    /// <summary>None.</summary>
    None,

    /// <summary>Two or three smooth pins through the distal humerus.</summary>
    HumeralPins,

    /// <summary>Two pins and a wire loop at the olecranon.</summary>
    OlecranonTensionBand,

    /// <summary>A plate with screws along the lateral column of the humerus.</summary>
    HumeralPlate,
}
