namespace ElbowAssist.Phantom.Injury;

/// <summary>Kinds of injury the phantom can show.</summary>
public enum InjuryKind
{
    /// <summary>Supracondylar break, distal fragment backwards.</summary>
    SupracondylarExtension,

    /// <summary>Supracondylar break, distal fragment forwards.</summary>
    SupracondylarFlexion,

    /// <summary>Lateral condyle.</summary>
    LateralCondyle,

    /// <summary>The whole distal epiphysis in an infant.</summary>
    DistalPhysealSeparation,

    /// <summary>Avulsion of the medial epicondyle.</summary>
    MedialEpicondyle,

    /// <summary>Radial neck.</summary>
    RadialNeck,

    /// <summary>Crack or step of the radial head.</summary>
    RadialHead,

    /// <summary>Radial head out of place to the front.</summary>
    RadialHeadAnterior,

    /// <summary>Radial head out of place to the back.</summary>
    RadialHeadPosterior,

    /// <summary>Radial head out of place to lateral.</summary>
    RadialHeadLateral,

    /// <summary>Radial head out of place to the front with a broken or bowed ulna.</summary>
    RadialHeadAnteriorWithUlna,

    /// <summary>Olecranon.</summary>
    Olecranon,

    /// <summary>Tip of the coronoid.</summary>
    Coronoid,

    /// <summary>Shear of the capitellum.</summary>
    CapitellarShear,

    /// <summary>Forearm out of the joint.</summary>
    ElbowDislocation,

    /// <summary>Old supracondylar break, healed out of line and remodelled: mostly varus, some valgus.</summary>
    OldSupracondylar,

    /// <summary>Fluid in the joint and no break to be seen.</summary>
    EffusionOnly,
}
