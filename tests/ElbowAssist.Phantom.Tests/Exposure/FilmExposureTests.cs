using CsCheck;
using ElbowAssist.Phantom.Exposure;
using ElbowAssist.Phantom.Exposure.Annotations;
using ElbowAssist.Phantom.Exposure.Field;
using ElbowAssist.Phantom.Exposure.Physics;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class FilmExposureTests
{
    private const double PixelMm = 0.6;

    private static readonly ExposureSettings Quiet = new()
    {
        Beam = new() { TableMm = 0, HeelSlope = 0, ScatterScale = 0, FocalBlurMm = 0 },
        Detector = new() { ElectronicNoise = 0, BlurMm = 0, Glare = 0 },
    };

    [Fact]
    public void Slab_LetsThroughWhatTheBeamModelSays() =>
        Gen.Select(Gen.Double[10, 80], Gen.Double[0, 20], Gen.Double[0, 10]).Sample((soft, fat, bone) =>
        {
            var expected = new BeamModel(Quiet.Beam).Transmission(soft, fat, bone, 0, 0);
            var signal = Detect(Slab(soft, fat, bone), Quiet with { Detector = Quiet.Detector with { DoseMicrogray = 1e6 } });
            Assert.Equal(expected, signal.Average(), 1e-4);
        }, iter: 20);

    [Fact]
    public void BeamHardens_SoThatASecondSlabStopsLessThanTheFirst()
    {
        var beam = new BeamModel(new BeamSettings());
        Assert.True(beam.Transmission(0, 0, 10, 0, 0) > Math.Pow(beam.Transmission(0, 0, 5, 0, 0), 2));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    public void NoiseVariance_FallsAsTheDoseRises(double factor)
    {
        var low = RelativeVariance(1);
        var high = RelativeVariance(factor);
        Assert.Equal(factor, low / high, factor * 0.1);
    }

    // A Poisson count has variance 1/N: 1 µGy, 21 759 quanta/(mm²·µGy), 0.36 mm², efficiency 0.65.
    [Fact]
    public void NoiseVariance_IsThatOfThePoissonLaw() =>
        Assert.Equal(1 / (21759 * 0.36 * 0.65), RelativeVariance(1), 0.05 / (21759 * 0.36 * 0.65));

    [Fact]
    public void SameSettings_GiveTheSamePixels_AndAnotherSeedOthers()
    {
        var paths = Arm();
        var settings = new ExposureSettings { NoiseSeed = 7 };
        var film = new FilmExposure().Expose(paths, PixelMm, settings);
        var used = new FilmExposure();
        used.Expose(Slab(30, 0, 3), PixelMm, settings);
        Assert.Equal(film, used.Expose(paths, PixelMm, settings));
        Assert.NotEqual(film, used.Expose(paths, PixelMm, settings with { NoiseSeed = 8 }));
    }

    [Fact]
    public void Bone_IsBrighterThanSoftTissue_AndSoftTissueThanAir()
    {
        var (air, soft, bone) = Levels(new ExposureSettings());
        Assert.True(air < soft && soft < bone);
    }

    [Fact]
    public void Inversion_MirrorsTheGreys()
    {
        var plain = new ExposureSettings();
        var straight = new FilmExposure().Expose(Arm(), PixelMm, plain);
        var inverted = new FilmExposure().Expose(Arm(), PixelMm, plain with { Processing = new() { Inverted = true } });
        Assert.All(straight.Zip(inverted), pair => Assert.InRange(pair.First + pair.Second, 65535 - 17, 65535 + 17));
    }

    [Fact]
    public void SoftTissue_LandsOnItsGrey() =>
        Assert.All([0.12, 0.25, 0.45], grey =>
        {
            var (_, soft, _) = Levels(new ExposureSettings { Processing = new() { SoftTissueGrey = grey } });
            Assert.Equal(grey, soft / 65535.0, 0.08);
        });

    [Fact]
    public void Shutter_PaintsTheUnexposedPart_AndTheFieldKnowsIt()
    {
        var settings = new ExposureSettings
        {
            Field = new() { Shape = FieldShape.Rectangle, HalfWidth = 0.3, HalfHeight = 0.25, TurnDegrees = 20, ShutterGrey = 1 },
        };
        var paths = Arm();
        var film = new FilmExposure().Expose(paths, PixelMm, settings);
        var field = new ExposedField(settings, paths.Width, paths.Height, PixelMm);
        for (var y = 0; y < paths.Height; y++)
        {
            for (var x = 0; x < paths.Width; x++)
            {
                if (!field.Contains(new(x + 0.5, y + 0.5)))
                {
                    Assert.Equal(65535, film[(y * paths.Width) + x]);
                }
            }
        }

        Assert.True(field.Contains(new(64, 64)));
        Assert.False(field.Contains(new(2, 2)));
    }

    [Fact]
    public void LeadMarker_IsBright_AndBurnedInTextHasItsGrey()
    {
        var lead = new Annotation("L", AnnotationKind.Lead, 0.35, -0.35, 0.1, 0, false, 0.15, 0);
        var text = lead with { Text = "AP", Kind = AnnotationKind.BurnedIn, X = -0.3, Y = 0.3, Grey = 0.9 };
        var film = new FilmExposure().Expose(Arm(), PixelMm, new ExposureSettings { Annotations = [lead, text] });
        var plain = new FilmExposure().Expose(Arm(), PixelMm, new ExposureSettings());
        Assert.Contains(film, value => Math.Abs(value - (0.9 * 65535)) < 20);
        Assert.True(film.Zip(plain).Count(pair => pair.First > pair.Second + 5000) > 40);
    }

    private static double RelativeVariance(double dose)
    {
        var settings = Quiet with { NoiseSeed = 3, Detector = Quiet.Detector with { DoseMicrogray = dose } };
        var signal = Detect(Slab(50, 5, 2), settings);
        var mean = signal.Average(v => (double)v);
        return signal.Average(v => (v - mean) * (v - mean)) / (mean * mean);
    }

    private static float[] Detect(PathImage paths, ExposureSettings settings) =>
        new FilmExposure().Detect(paths, PixelMm, settings, new ExposedField(settings, paths.Width, paths.Height, PixelMm)).ToArray();

    private static (double Air, double Soft, double Bone) Levels(ExposureSettings settings)
    {
        var film = new FilmExposure().Expose(Arm(), PixelMm, settings);
        double Mean(int x0, int x1) => Enumerable.Range(40, 40).SelectMany(y => Enumerable.Range(x0, x1 - x0).Select(x => (double)film[(y * 128) + x])).Average();
        return (Mean(2, 8), Mean(30, 40), Mean(55, 73));
    }

    private static PathImage Slab(double soft, double fat, double bone)
    {
        var paths = new PathImage(128, 128);
        Array.Fill(paths.Soft, (float)soft);
        Array.Fill(paths.Fat, (float)fat);
        Array.Fill(paths.Bone, (float)bone);
        return paths;
    }

    /// <summary>Air, a slab of soft tissue in it, and a strip of bone in that.</summary>
    private static PathImage Arm()
    {
        var paths = new PathImage(128, 128);
        for (var i = 0; i < paths.Soft.Length; i++)
        {
            var x = i % 128;
            paths.Bone[i] = x is >= 50 and < 78 ? 8 : 0;
            paths.Soft[i] = x is >= 20 and < 108 ? 45 - paths.Bone[i] : 0;
        }

        return paths;
    }
}
