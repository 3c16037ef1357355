namespace ElbowAssist.Phantom.Exposure.Settings;

/// <summary>Shape of the exposed field.</summary>
public enum FieldShape
{
    /// <summary>The whole image is exposed.</summary>
    Full,

    /// <summary>Rectangle, perhaps turned.</summary>
    Rectangle,

    /// <summary>Circle or ellipse.</summary>
    Ellipse,
}

/// <summary>Collimation. Places and sizes are shares of the longer image side, from the image centre.</summary>
public sealed record FieldSettings
{
    /// <summary>Shape of the exposed field.</summary>
    public FieldShape Shape { get; init; } = FieldShape.Full;

    /// <summary>Centre of the field to the right of the image centre.</summary>
    public double CentreX { get; init; }

    /// <summary>Centre of the field below the image centre.</summary>
    public double CentreY { get; init; }

    /// <summary>Half the width of the field.</summary>
    public double HalfWidth { get; init; } = 0.5;

    /// <summary>Half the height of the field.</summary>
    public double HalfHeight { get; init; } = 0.5;

    /// <summary>Turn of the field, degrees from x towards y.</summary>
    public double TurnDegrees { get; init; }

    /// <summary>Width of the soft edge in millimetres (penumbra of the diaphragm).</summary>
    public double PenumbraMm { get; init; } = 0.8;

    /// <summary>Share of the beam that reaches the film beyond the diaphragm.</summary>
    public double Leakage { get; init; } = 0.004;

    /// <summary>Grey painted over the unexposed part by an electronic shutter, 0 to 1; null leaves the film as it is.</summary>
    public double? ShutterGrey { get; init; }
}
