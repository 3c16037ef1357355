namespace ElbowAssist.Anatomy.Landmarks;

/// <summary>Who laid a landmark.</summary>
public enum LandmarkSource
{
    /// <summary>A proposal by a model.</summary>
    Model,

    /// <summary>A placement by a reader.</summary>
    Reader,
}
