namespace ElbowAssist.Phantom.NotRadiograph;

/// <summary>Kinds of grey images that are no radiographs.</summary>
public enum PlainImageKind
{
    /// <summary>One grey, perhaps with a little noise.</summary>
    Blank,

    /// <summary>Noise of one grain.</summary>
    Noise,

    /// <summary>A smooth gradient.</summary>
    Gradient,

    /// <summary>A page of text.</summary>
    TextPage,

    /// <summary>A line drawing, perhaps of a limb.</summary>
    Drawing,

    /// <summary>Shaded things in front of an uneven background under one light, as on a photograph.</summary>
    Photograph,

    /// <summary>Filled boxes and lines as on a screen.</summary>
    Screen,
}
