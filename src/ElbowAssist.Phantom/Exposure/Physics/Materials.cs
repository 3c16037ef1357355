namespace ElbowAssist.Phantom.Exposure.Physics;

/// <summary>The materials a film can hold, as linear attenuation tables.</summary>
public static class Materials
{
    private const string Nist =
        "Mass attenuation: Hubbell and Seltzer, X-Ray Mass Attenuation Coefficients, NISTIR 5632 / SRD 126; " +
        "compositions and densities: ICRU Report 44";

    private const string Mixture =
        "Mixture rule over the elemental tables of Hubbell and Seltzer, NISTIR 5632 / SRD 126, for a nominal composition";

    private static readonly double[] EnergiesKev = [20, 30, 40, 50, 60, 80];

    /// <summary>Compact bone, 1.92 g/cm³.</summary>
    public static AttenuationTable CorticalBone { get; } =
        FromMass("cortical bone", 1.920, [4.001, 1.331, 0.6655, 0.4242, 0.3148, 0.2229]);

    /// <summary>Soft tissue, 1.06 g/cm³; also stands for cartilage, skin and red marrow.</summary>
    public static AttenuationTable SoftTissue { get; } =
        FromMass("soft tissue", 1.060, [0.8230, 0.3790, 0.2688, 0.2264, 0.2048, 0.1823]);

    /// <summary>Adipose tissue, 0.95 g/cm³.</summary>
    public static AttenuationTable Adipose { get; } =
        FromMass("adipose tissue", 0.950, [0.5677, 0.3063, 0.2396, 0.2123, 0.1974, 0.1800]);

    /// <summary>Surgical steel 316L, 7.95 g/cm³; stands for cobalt-chromium too.</summary>
    public static AttenuationTable Steel { get; } =
        new("steel 316L", Mixture, EnergiesKev, [210, 67.5, 30.1, 16.2, 9.99, 4.92]);

    /// <summary>Titanium alloy Ti-6Al-4V, 4.43 g/cm³.</summary>
    public static AttenuationTable TitaniumAlloy { get; } =
        new("Ti-6Al-4V", Mixture, EnergiesKev, [67.2, 21.1, 9.41, 5.17, 3.28, 1.75]);

    /// <summary>Set, dry plaster of Paris, 1.0 g/cm³.</summary>
    public static AttenuationTable Plaster { get; } =
        new("plaster", Mixture, EnergiesKev, [4.78, 1.56, 0.762, 0.473, 0.343, 0.234]);

    /// <summary>Plaster in its first two days, still wet: attenuation raised by half (reasoned from its density of 1.5–1.7).</summary>
    public static AttenuationTable WetPlaster { get; } =
        new("wet plaster", Mixture + "; dry plaster × 1.5, own estimate", EnergiesKev, [7.17, 2.34, 1.143, 0.7095, 0.5145, 0.351]);

    /// <summary>Glass-fibre cast tape, 0.85 g/cm³, 40 % E-glass by weight.</summary>
    public static AttenuationTable GlassFibre { get; } =
        new("glass fibre tape", Mixture, EnergiesKev, [1.56, 0.572, 0.328, 0.239, 0.197, 0.159]);

    /// <summary>Aluminium, 2.699 g/cm³, the reference filter.</summary>
    public static AttenuationTable Aluminium { get; } = new(
        "aluminium",
        "Hubbell and Seltzer, NISTIR 5632 / SRD 126, quoted from memory",
        [15, 20, 30, 40, 50, 60, 80],
        [.. new[] { 7.955, 3.441, 1.128, 0.5685, 0.3681, 0.2778, 0.2018 }.Select(massAttenuation => massAttenuation * 2.699)]);

    private static AttenuationTable FromMass(string name, double density, double[] squareCentimetresPerGram) =>
        new(name, Nist, EnergiesKev, [.. squareCentimetresPerGram.Select(massAttenuation => massAttenuation * density)]);
}
