namespace ElbowAssist.Anatomy.Landmarks;

/// <summary>The landmark names. Numbered families take their number at the end, counted from 1.</summary>
public static class LandmarkNames
{
#pragma warning disable CS1591 // each constant is the name it holds; the meaning stands in LandmarkSet
    public const string HumerusFossaRoof = "humerus.fossa.roof";
    public const string HumerusWaist = "humerus.waist";
    public const string CapitellumPhysisAnterior = "capitellum.physis.anterior";
    public const string CapitellumPhysisPosterior = "capitellum.physis.posterior";
    public const string RadiusHeadAnterior = "radius.head.anterior";
    public const string RadiusHeadPosterior = "radius.head.posterior";
    public const string UlnaCoronoid = "ulna.coronoid";
    public const string UlnaOlecranon = "ulna.olecranon";
    public const string FatPadAnteriorTip = "fatpad.anterior.tip";
    public const string FatPadAnteriorBase = "fatpad.anterior.base";
    public const string FatPadPosteriorTip = "fatpad.posterior.tip";
    public const string HumerusEpicondyleLateral = "humerus.epicondyle.lateral";
    public const string HumerusEpicondyleMedial = "humerus.epicondyle.medial";
    public const string CapitellumEdgeLateral = "capitellum.edge.lateral";
    public const string CapitellumEdgeMedial = "capitellum.edge.medial";
    public const string CapitellumDistal = "capitellum.distal";
    public const string CapitellumPhysisLateral = "capitellum.physis.lateral";
    public const string CapitellumPhysisMedial = "capitellum.physis.medial";
    public const string TrochleaEdgeMedial = "trochlea.edge.medial";
    public const string RadiusHeadLateral = "radius.head.lateral";
    public const string RadiusHeadMedial = "radius.head.medial";
#pragma warning restore CS1591

    /// <summary>Anterior humeral cortex, 1 (3.0 W above the fossa roof) to 5 (1.0 W).</summary>
    public static string HumerusAnterior(int number) => Numbered("humerus.anterior", number);

    /// <summary>Posterior humeral cortex, 1 to 5, same levels as the anterior.</summary>
    public static string HumerusPosterior(int number) => Numbered("humerus.posterior", number);

    /// <summary>Capitellar outline, 1 (0°, distal) to 12 (330°), 90° being anterior.</summary>
    public static string CapitellumRim(int number) => Numbered("capitellum.rim", number);

    /// <summary>Medial trochlear lip, 1 to 5 at −30, 0, 30, 60, 90°.</summary>
    public static string TrochleaLip(int number) => Numbered("trochlea.lip", number);

    /// <summary>Anterior cortex of the radius, 1 and 2 neck, 3 and 4 shaft.</summary>
    public static string RadiusAnterior(int number) => Numbered("radius.anterior", number);

    /// <summary>Posterior cortex of the radius, levels as the anterior.</summary>
    public static string RadiusPosterior(int number) => Numbered("radius.posterior", number);

    /// <summary>Trochlear notch between the tips, 1 to 4 from the coronoid.</summary>
    public static string UlnaNotch(int number) => Numbered("ulna.notch", number);

    /// <summary>Posterior border of the ulna, 1 to 3 at 2, 4, 6 W beyond the notch.</summary>
    public static string UlnaPosterior(int number) => Numbered("ulna.posterior", number);

    /// <summary>Lateral humeral cortex on AP, 1 (3.5 W above the fossa roof) to 4 (1.25 W).</summary>
    public static string HumerusLateral(int number) => Numbered("humerus.lateral", number);

    /// <summary>Medial humeral cortex on AP, levels as the lateral.</summary>
    public static string HumerusMedial(int number) => Numbered("humerus.medial", number);

    /// <summary>Lateral cortex of the radius on AP, 1 and 2 neck, 3 and 4 shaft.</summary>
    public static string RadiusLateral(int number) => Numbered("radius.lateral", number);

    /// <summary>Medial cortex of the radius on AP, levels as the lateral.</summary>
    public static string RadiusMedial(int number) => Numbered("radius.medial", number);

    /// <summary>Lateral cortex of the ulna on AP, 1 to 3 at 2, 4, 6 W below the coronoid.</summary>
    public static string UlnaLateral(int number) => Numbered("ulna.lateral", number);

    /// <summary>Medial cortex of the ulna on AP, levels as the lateral.</summary>
    public static string UlnaMedial(int number) => Numbered("ulna.medial", number);

    private static string Numbered(string family, int number) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{family}.{number}");
}
