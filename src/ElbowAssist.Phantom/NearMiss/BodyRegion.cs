namespace ElbowAssist.Phantom.NearMiss;

/// <summary>Body regions that are not an elbow, as generic assemblies of bones.</summary>
public enum BodyRegion
{
    /// <summary>Knee at any flexion.</summary>
    Knee,

    /// <summary>Ankle with hindfoot.</summary>
    Ankle,

    /// <summary>Foot.</summary>
    Foot,

    /// <summary>Hand with wrist.</summary>
    Hand,

    /// <summary>Wrist alone.</summary>
    Wrist,

    /// <summary>Two finger or toe joints, close up.</summary>
    Digit,

    /// <summary>Shafts of two parallel bones without a joint.</summary>
    ParallelShafts,

    /// <summary>Shaft of one long bone.</summary>
    SingleShaft,

    /// <summary>Shoulder.</summary>
    Shoulder,

    /// <summary>Hip of one side.</summary>
    Hip,

    /// <summary>Whole pelvis.</summary>
    Pelvis,

    /// <summary>Spine, any part.</summary>
    Spine,

    /// <summary>Chest wall.</summary>
    Chest,

    /// <summary>Skull.</summary>
    Skull,

    /// <summary>A made-up hinge joint at any flexion, without radius or capitellum.</summary>
    Hinge,

    /// <summary>Bones thrown together at random.</summary>
    Random,
}
