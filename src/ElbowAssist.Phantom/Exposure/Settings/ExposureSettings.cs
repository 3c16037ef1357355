using ElbowAssist.Phantom.Exposure.Annotations;

namespace ElbowAssist.Phantom.Exposure.Settings;

/// <summary>Everything that happens to a projection between the tube and the stored film, named and fixed.</summary>
public sealed record ExposureSettings
{
    /// <summary>Seed of the pixel noise.</summary>
    public ulong NoiseSeed { get; init; }

    /// <summary>Tube, scatter, table.</summary>
    public BeamSettings Beam { get; init; } = new();

    /// <summary>Dose and detector.</summary>
    public DetectorSettings Detector { get; init; } = new();

    /// <summary>Processing.</summary>
    public ProcessingSettings Processing { get; init; } = new();

    /// <summary>Collimation.</summary>
    public FieldSettings Field { get; init; } = new();

    /// <summary>Lead markers and burned-in text, painted in this order.</summary>
    public IReadOnlyList<Annotation> Annotations { get; init; } = [];

    /// <summary>A helper's hand at the edge of the field, or null.</summary>
    public HelperHand? Hand { get; init; }

    /// <summary>A second film on the same plate, or null.</summary>
    public SecondFilm? Second { get; init; }

    /// <summary>Stable codes of the faults of exposure and field that were put in; empty for a well-made film.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];
}

/// <summary>A helper's hand reaching into the field.</summary>
/// <param name="X">Knuckles, to the right of the image centre, as a share of the longer image side.</param>
/// <param name="Y">Knuckles, below the image centre, as a share of the longer image side.</param>
/// <param name="DirectionDegrees">Where the fingers point, degrees from x towards y.</param>
/// <param name="LengthMm">From the wrist to the tip of the middle finger, 150 to 200 mm.</param>
public sealed record HelperHand(double X, double Y, double DirectionDegrees, double LengthMm);

/// <summary>A second film beside the first on one plate, beyond a straight border.</summary>
/// <param name="Edge">Side of the image that it takes.</param>
/// <param name="Share">Share of the image that it takes, 0.2 to 0.5.</param>
/// <param name="GapMm">Unexposed strip between the films.</param>
public sealed record SecondFilm(FilmEdge Edge, double Share, double GapMm);

/// <summary>A side of the image.</summary>
public enum FilmEdge
{
    /// <summary>Left.</summary>
    Left,

    /// <summary>Right.</summary>
    Right,

    /// <summary>Top.</summary>
    Top,

    /// <summary>Bottom.</summary>
    Bottom,
}
