namespace ElbowAssist.Phantom.Injury;

/// <summary>
/// One injury and how far it goes. Millimetres and degrees against the uninjured elbow; which of them count depends on
/// the kind.
/// </summary>
/// <param name="Kind">Kind.</param>
public sealed record ElbowInjury(InjuryKind Kind)
{
    /// <summary>Bend: supracondylar positive backwards (extension type), radial neck positive away from the shaft, ulna positive to the flexor side.</summary>
    public double AngleDegrees { get; init; }

    /// <summary>Bend in the coronal plane, positive valgus.</summary>
    public double CoronalDegrees { get; init; }

    /// <summary>Turn about the long axis.</summary>
    public double RotationDegrees { get; init; }

    /// <summary>Shift of the fragment or bone to the front.</summary>
    public double Forward { get; init; }

    /// <summary>Shift away from the shoulder.</summary>
    public double Distal { get; init; }

    /// <summary>Shift to lateral.</summary>
    public double Lateral { get; init; }

    /// <summary>Place of the break along the bone, as a share of its usual range, 0 to 1.</summary>
    public double Level { get; init; }

    /// <summary>Tilt of the plane of the break.</summary>
    public double ObliquityDegrees { get; init; }

    /// <summary>Width of the crack.</summary>
    public double Gap { get; init; }

    /// <summary>Fluid in the joint, millilitres in an adult elbow; scaled to size.</summary>
    public double Effusion { get; init; }

    /// <summary>Stable code, such as <c>supracondylar-extension</c>.</summary>
    public string Code => InjuryCodes.Of(Kind);
}
