namespace ElbowAssist.Phantom.Exposure.Settings;

/// <summary>Tube, scatter and what lies behind the arm.</summary>
public sealed record BeamSettings
{
    /// <summary>Tube voltage in kV, 50 to 70 for an elbow.</summary>
    public double Kilovolts { get; init; } = 57;

    /// <summary>Total filtration in millimetres of aluminium.</summary>
    public double FilterMm { get; init; } = 2.8;

    /// <summary>Relative fall of intensity from one side of the film to the other (heel effect), 0 to 0.4.</summary>
    public double HeelSlope { get; init; } = 0.08;

    /// <summary>Direction in which the heel effect falls, degrees from x towards y.</summary>
    public double HeelDirectionDegrees { get; init; }

    /// <summary>Factor on the scatter-to-primary ratio of a film without grid; 1 for an air gap of 5 mm.</summary>
    public double ScatterScale { get; init; } = 0.9;

    /// <summary>Full width at half maximum of the spread of scatter, in millimetres on the detector, 40 to 80.</summary>
    public double ScatterWidthMm { get; init; } = 55;

    /// <summary>Focal spot and motion: standard deviation of the blur across, in millimetres in the object plane.</summary>
    public double FocalBlurMm { get; init; } = 0.03;

    /// <summary>Length of a straight motion during the exposure, in millimetres in the object plane.</summary>
    public double MotionMm { get; init; }

    /// <summary>Direction of the motion, degrees from x towards y.</summary>
    public double MotionDirectionDegrees { get; init; }

    /// <summary>Table or cassette front in millimetres of soft tissue.</summary>
    public double TableMm { get; init; } = 3;

    /// <summary>Thickness of the table rises by this share from one side of the film to the other.</summary>
    public double TableSlope { get; init; }

    /// <summary>What metal on the film is made of.</summary>
    public MetalMaterial Metal { get; init; } = MetalMaterial.Steel;

    /// <summary>What a cast on the film is made of.</summary>
    public CastMaterial Cast { get; init; } = CastMaterial.Plaster;
}

/// <summary>Material of implants, wires and pins.</summary>
public enum MetalMaterial
{
    /// <summary>Surgical steel or cobalt-chromium.</summary>
    Steel,

    /// <summary>Titanium alloy.</summary>
    Titanium,
}

/// <summary>Material of a cast or splint.</summary>
public enum CastMaterial
{
    /// <summary>Set, dry plaster.</summary>
    Plaster,

    /// <summary>Plaster of the first two days.</summary>
    WetPlaster,

    /// <summary>Glass fibre tape.</summary>
    GlassFibre,
}
