using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Exposure.Sampling;

/// <summary>
/// Draws how a film was exposed and processed. Tube and dose ranges are those of published elbow technique (50 to
/// 70 kV, 2.5 to 5 µGy at the detector, no grid); processing and faults are own estimates.
/// </summary>
public static class ExposureSampler
{
    /// <summary>Draws the settings of a film.</summary>
    /// <param name="random">Stream of this film; the same stream gives the same settings.</param>
    /// <param name="adequacy">Well made, as they come, or faulty.</param>
    /// <param name="content">What is on the film.</param>
    public static ExposureSettings Sample(CounterRandom random, Adequacy adequacy, FilmContent content)
    {
        ArgumentNullException.ThrowIfNull(random);
        ArgumentNullException.ThrowIfNull(content);
        var faults = FilmFaults.Draw(random, adequacy);
        var hasCast = content.Paths.Cast.Any(v => v > 0);
        var beam = Beam(random, faults, hasCast);
        var detector = Detector(random, faults);
        var processing = Processing(random, adequacy, faults);
        var field = FieldSampler.Field(random, faults, content);
        return new ExposureSettings
        {
            NoiseSeed = random.NextBits(),
            Beam = beam,
            Detector = detector,
            Processing = processing,
            Field = field,
            Annotations = AnnotationSampler.Sample(random, content, field),
            Hand = FieldSampler.Hand(random, faults, content),
            Second = FieldSampler.Second(random, faults),
            Faults = [.. faults.Order(StringComparer.Ordinal)],
        };
    }

    private static BeamSettings Beam(CounterRandom r, HashSet<string> faults, bool hasCast)
    {
        var kilovolts = r.Normal(58, 4.5, 50, 70);
        var motion = r.Uniform(0, 0.15);
        return new BeamSettings
        {
            // Rule of thumb of radiography courses: some 6 kV more through plaster.
            Kilovolts = Math.Min(72, kilovolts + (hasCast ? r.Uniform(0, 7) : 0)),
            FilterMm = r.Uniform(2.5, 3.6),
            HeelSlope = r.Uniform(0, 0.22),
            HeelDirectionDegrees = r.Uniform(0, 360),
            ScatterScale = r.Uniform(0.65, 1.05),
            ScatterWidthMm = r.Uniform(40, 80),
            FocalBlurMm = r.Uniform(0.012, 0.09),
            MotionMm = faults.Contains(FilmFaults.Motion) ? r.Uniform(0.5, 1.6) : motion,
            MotionDirectionDegrees = r.Uniform(0, 180),
            TableMm = r.Uniform(0, 8),
            TableSlope = r.Chance(0.2) ? r.Uniform(-0.8, 0.8) : 0,
            Metal = r.Chance(0.5) ? MetalMaterial.Steel : MetalMaterial.Titanium,
            Cast = r.Chance(0.35) ? CastMaterial.GlassFibre : r.Chance(0.25) ? CastMaterial.WetPlaster : CastMaterial.Plaster,
        };
    }

    private static DetectorSettings Detector(CounterRandom r, HashSet<string> faults)
    {
        var dose = Math.Exp(r.Normal(Math.Log(3.4), 0.35));
        var efficiency = r.Chance(0.75) ? r.Uniform(0.5, 0.75) : r.Uniform(0.2, 0.35);
        var blur = r.Uniform(0.07, 0.17);
        if (faults.Contains(FilmFaults.Underexposed))
        {
            dose *= r.Uniform(0.04, 0.25);
        }

        if (faults.Contains(FilmFaults.LowResolution))
        {
            blur = r.Uniform(0.35, 0.8);
        }

        return new DetectorSettings
        {
            DoseMicrogray = dose,
            Efficiency = efficiency,
            ElectronicNoise = r.Uniform(3, 12),
            Saturation = faults.Contains(FilmFaults.Overexposed) ? r.Uniform(1.1, 2.6) : r.Uniform(20, 100),
            BlurMm = blur,
            Glare = r.Uniform(0, 0.06),
        };
    }

    private static ProcessingSettings Processing(CounterRandom r, Adequacy adequacy, HashSet<string> faults)
    {
        var isOverdone = faults.Contains(FilmFaults.OverProcessed);
        var isFlat = faults.Contains(FilmFaults.FlatContrast);
        var isNarrow = faults.Contains(FilmFaults.NarrowWindow);
        var spread = adequacy == Adequacy.Good ? 0.5 : 1;
        var darkest = r.Chance(0.75) ? r.Uniform(0.1, 2) : r.Uniform(2, 2 + (14 * spread));
        var normalisation = r.Uniform(0.4, 1);
        return new ProcessingSettings
        {
            WindowLowPercentile = darkest,
            WindowHighPercentile = r.Uniform(99.2, 99.98),
            Headroom = isFlat ? r.Uniform(0.5, 1.1) : r.Uniform(0, 0.25),
            DetailGain = isOverdone ? r.Uniform(1.5, 3) : r.Uniform(0, 1.0),
            StructureGain = isOverdone ? r.Uniform(0.8, 1.6) : r.Uniform(0, 0.6),
            Equalisation = isOverdone ? r.Uniform(0.5, 0.9) : r.Uniform(0, 0.55),
            LocalNormalisation = isOverdone && r.Chance(0.5) ? normalisation : 0,
            SoftTissueGrey = isFlat ? r.Uniform(0.3, 0.6) : Math.Exp(r.Normal(Math.Log(0.22), 0.35 * spread, Math.Log(0.07), Math.Log(0.55))),
            SigmoidSlope = r.Chance(0.45) ? r.Uniform(0.8, 3) : 0,
            ClipLow = isNarrow && r.Chance(0.5) ? r.Uniform(0.08, 0.3) : r.Uniform(0, 0.02),
            ClipHigh = isNarrow ? r.Uniform(0.15, 0.45) : r.Uniform(-0.08, 0.04),
            Inverted = faults.Contains(FilmFaults.Inverted),
            Bits = r.Chance(0.6) ? 12 : r.Chance(0.5) ? 10 : r.Chance(0.6) ? 14 : 8,
        };
    }
}
