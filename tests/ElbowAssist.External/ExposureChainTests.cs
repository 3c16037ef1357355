using ElbowAssist.Phantom.Exposure.Physics;
using ElbowAssist.Phantom.Exposure.Settings;

namespace ElbowAssist.External;

/// <summary>The beam as a whole against published or hand-worked figures.</summary>
public sealed class ExposureChainTests
{
    // 4 mm of compact bone at 50 keV: exp(−0.8145·0.4) = 0.722, from NISTIR 5632 / SRD 126 (0.4242 cm²/g, 1.92 g/cm³).
    [Fact]
    public void CompactBone_4Millimetres_At50Kev() =>
        Assert.Equal(0.722, Materials.CorticalBone.Transmission(50, 4), 0.001);

    // Narrowing: with a spectrum the mean attenuation lies between those of the table at 30 and 60 keV, for bone
    // 2.556 and 0.6044 1/cm (same source).
    [Theory]
    [InlineData(50)]
    [InlineData(60)]
    [InlineData(70)]
    public void PolychromaticBone_LiesBetweenTheEndsOfTheSpectrum(double kilovolts)
    {
        var beam = new BeamModel(new BeamSettings { Kilovolts = kilovolts });
        var perCentimetre = -Math.Log(beam.Transmission(0, 0, 1, 0, 0)) * 10;
        Assert.InRange(perCentimetre, 0.6044, 2.556);
    }

    // Fat against soft tissue, 5 mm: 5.4 % at 30 keV and 2.8 % at 40 keV by the same tables; mean energies of
    // extremity films lie between, so the signal of a fat plane must too.
    [Fact]
    public void FatPlane_HasTheContrastOfItsMeanEnergy()
    {
        var beam = new BeamModel(new BeamSettings { Kilovolts = 58, FilterMm = 2.8 });
        var contrast = (beam.Transmission(55, 5, 0, 0, 0) / beam.Transmission(60, 0, 0, 0, 0)) - 1;
        Assert.InRange(contrast, 0.024, 0.054);
    }

    // Order of attenuation of cast materials, wet plaster over dry plaster over glass fibre (mixture rule; the order
    // is also common practice).
    [Fact]
    public void CastMaterials_AreOrdered()
    {
        double Through(CastMaterial cast) => new BeamModel(new BeamSettings { Cast = cast }).Transmission(50, 0, 0, 0, 5);
        Assert.True(Through(CastMaterial.WetPlaster) < Through(CastMaterial.Plaster));
        Assert.True(Through(CastMaterial.Plaster) < Through(CastMaterial.GlassFibre));
    }
}
