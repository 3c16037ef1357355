using ElbowAssist.Phantom.Sampling;
using ElbowAssist.Phantom.Shape;

namespace ElbowAssist.Phantom.Injury;

/// <summary>
/// Draws injuries and their degree, undisplaced ones too. Shares and ranges follow published types; inside a type they
/// are estimates. Sizes scale with the elbow.
/// </summary>
internal static class InjurySampler
{
    private static readonly (InjuryKind Kind, double Child, double Adult)[] Shares =
    [
        (InjuryKind.SupracondylarExtension, 34, 5),
        (InjuryKind.SupracondylarFlexion, 4, 2),
        (InjuryKind.LateralCondyle, 10, 1),
        (InjuryKind.MedialEpicondyle, 6, 2),
        (InjuryKind.RadialNeck, 7, 9),
        (InjuryKind.RadialHead, 0, 24),
        (InjuryKind.RadialHeadAnterior, 6, 2),
        (InjuryKind.RadialHeadPosterior, 2, 2),
        (InjuryKind.RadialHeadLateral, 4, 1),
        (InjuryKind.RadialHeadAnteriorWithUlna, 6, 1),
        (InjuryKind.Olecranon, 5, 16),
        (InjuryKind.Coronoid, 1, 7),
        (InjuryKind.CapitellarShear, 1, 4),
        (InjuryKind.ElbowDislocation, 3, 10),
        (InjuryKind.OldSupracondylar, 5, 4),
        (InjuryKind.EffusionOnly, 11, 14),
    ];

    public static ElbowInjury? Sample(CounterRandom r, ElbowShape shape, double ageYears, SimulationOptions options)
    {
        if (options.Injuries is { Count: > 0 } wanted)
        {
            return Of(wanted[(int)(r.Uniform() * wanted.Count)], r, shape);
        }

        return r.Chance(options.InjuredShare) ? Of(Pick(r, ageYears), r, shape) : null;
    }

    /// <summary>Some breaks have been set and fixed: metal, and little displacement left.</summary>
    public static Fixation Fix(CounterRandom r, double ageYears, ref ElbowInjury? injury)
    {
        var fixation = injury?.Kind switch
        {
            InjuryKind.SupracondylarExtension or InjuryKind.SupracondylarFlexion or InjuryKind.LateralCondyle =>
                ageYears < 14 ? Fixation.HumeralPins : Fixation.HumeralPlate,
            InjuryKind.Olecranon => ageYears < 10 ? Fixation.None : Fixation.OlecranonTensionBand,
            _ => Fixation.None,
        };
        if (injury is null || fixation == Fixation.None || !r.Chance(0.12))
        {
            return Fixation.None;
        }

        const double left = 0.15;
        injury = injury with
        {
            AngleDegrees = injury.AngleDegrees * left,
            CoronalDegrees = injury.CoronalDegrees * left,
            RotationDegrees = injury.RotationDegrees * left,
            Forward = injury.Forward * left,
            Distal = injury.Distal * left,
            Lateral = injury.Lateral * left,
            Effusion = 0.4 * injury.Effusion,
            Gap = Math.Min(injury.Gap, 0.8),
        };
        return fixation;
    }

    private static InjuryKind Pick(CounterRandom r, double age)
    {
        if (age < 2.5 && r.Chance(0.15))
        {
            return InjuryKind.DistalPhysealSeparation;
        }

        var left = r.Uniform() * Shares.Sum(s => age < 15 ? s.Child : s.Adult);
        foreach (var (kind, child, adult) in Shares)
        {
            left -= age < 15 ? child : adult;
            if (left < 0)
            {
                return kind;
            }
        }

        return InjuryKind.EffusionOnly;
    }

    private static ElbowInjury Of(InjuryKind kind, CounterRandom r, ElbowShape shape)
    {
        var k = shape.Humerus.EpicondylarWidth / 60;
        var u = r.Uniform();
        var effusion = r.Chance(0.15) ? 0 : r.Uniform(3, 20);
        var crack = r.Uniform(0.3, 1.0);
        var basis = new ElbowInjury(kind) { Effusion = effusion, Gap = crack, Level = r.Uniform(), ObliquityDegrees = r.Normal(0, 10) };
        return kind switch
        {
            InjuryKind.SupracondylarExtension or InjuryKind.SupracondylarFlexion => Supracondylar(basis, r, u, shape.Humerus.WaistAp),
            InjuryKind.DistalPhysealSeparation => basis with
            {
                AngleDegrees = r.Uniform(0, 20),
                RotationDegrees = r.Uniform(0, 25),
                Forward = -r.Uniform(0.2, 0.8) * shape.Humerus.WaistAp,
                Lateral = -r.Uniform(0.2, 0.7) * shape.Humerus.WaistAp,
            },
            InjuryKind.OldSupracondylar => basis with
            {
                Effusion = 0,
                CoronalDegrees = u < 0.8 ? -r.Uniform(4, 24) : r.Uniform(4, 16),
                AngleDegrees = r.Normal(5, 8),
                RotationDegrees = r.Uniform(0, 20),
                Lateral = r.Normal(0, 0.08) * shape.Humerus.WaistAp,
                ObliquityDegrees = r.Normal(0, 5),
            },
            InjuryKind.LateralCondyle => basis with
            {
                Gap = u < 0.4 ? r.Uniform(0.5, 2) : 1,
                Lateral = u < 0.4 ? 0 : r.Uniform(1, u < 0.8 ? 6 : 12) * k,
                Forward = u < 0.4 ? 0 : -r.Uniform(0, 4) * k,
                Distal = u < 0.4 ? 0 : -r.Uniform(0, 4) * k,
                RotationDegrees = u < 0.4 ? 0 : u < 0.8 ? r.Uniform(0, 20) : r.Uniform(20, 90),
            },
            InjuryKind.MedialEpicondyle => MedialEpicondyle(basis, r, u, k),
            InjuryKind.RadialNeck => basis with
            {
                AngleDegrees = u < 0.4 ? r.Uniform(0, 12) : u < 0.8 ? r.Uniform(12, 35) : r.Uniform(35, 75),
                Lateral = u < 0.4 ? 0 : r.Uniform(0, 4) * k,
                RotationDegrees = r.Normal(0, 45),
            },
            InjuryKind.RadialHead => basis with
            {
                Gap = u < 0.6 ? r.Uniform(0.3, 1.2) : r.Uniform(0.8, 2.5),
                Distal = u < 0.6 ? r.Uniform(0, 1.8) : r.Uniform(2, 5),
                AngleDegrees = u < 0.6 ? r.Uniform(0, 5) : r.Uniform(5, 25),
                RotationDegrees = r.Normal(30, 45),
            },
            InjuryKind.RadialHeadAnterior or InjuryKind.RadialHeadAnteriorWithUlna => basis with
            {
                Forward = r.Uniform(u < 0.3 ? 3 : 7, u < 0.3 ? 8 : 18) * k,
                Distal = -r.Uniform(-1, 6) * k,
                Lateral = r.Normal(0, 2) * k,
                AngleDegrees = r.Chance(0.25) ? r.Uniform(4, 12) : r.Uniform(10, 40),
            },
            InjuryKind.RadialHeadPosterior => basis with { Forward = -r.Uniform(5, 16) * k, Distal = -r.Uniform(0, 5) * k },
            InjuryKind.RadialHeadLateral => basis with { Lateral = r.Uniform(5, 13) * k, Forward = r.Uniform(0, 8) * k },
            InjuryKind.Olecranon => basis with
            {
                Gap = u < 0.45 ? r.Uniform(0.4, 2) : r.Uniform(2, 5),
                Distal = u < 0.45 ? 0 : -r.Uniform(1, 15) * k,
                AngleDegrees = u < 0.45 ? 0 : r.Uniform(0, 25),
            },
            InjuryKind.Coronoid => basis with { Forward = r.Uniform(0.5, 5) * k, Distal = -r.Uniform(0, 3) * k, AngleDegrees = r.Uniform(0, 30) },
            InjuryKind.CapitellarShear => basis with
            {
                Forward = r.Uniform(1, 8) * k,
                Distal = -r.Uniform(2, 14) * k,
                AngleDegrees = r.Uniform(5, 70),
            },
            InjuryKind.ElbowDislocation => Dislocation(basis, r, u, k),
            _ => basis with { Effusion = r.Uniform(3, 20) },
        };
    }

    /// <summary>Pulled forward and down, or, one in seven, caught in the joint beside the trochlea.</summary>
    private static ElbowInjury MedialEpicondyle(ElbowInjury basis, CounterRandom r, double u, double k) => u < 0.86
        ? basis with
        {
            Gap = 1,
            Forward = r.Uniform(0, 12) * k,
            Distal = r.Uniform(1, 10) * k,
            Lateral = -r.Uniform(0, 3) * k,
            RotationDegrees = r.Uniform(0, 60),
        }
        : basis with
        {
            Gap = 1,
            Forward = r.Uniform(0, 7) * k,
            Distal = r.Uniform(17, 23) * k,
            Lateral = r.Uniform(12, 20) * k,
            RotationDegrees = r.Uniform(20, 120),
        };

    private static ElbowInjury Supracondylar(ElbowInjury basis, CounterRandom r, double u, double depth)
    {
        var sign = basis.Kind == InjuryKind.SupracondylarFlexion ? -1 : 1;
        return u switch
        {
            < 0.35 => basis with { AngleDegrees = sign * r.Uniform(0, 4), Gap = r.Uniform(0.2, 0.9), ObliquityDegrees = r.Normal(8, 10) },
            < 0.7 => basis with { AngleDegrees = sign * r.Uniform(5, 30), Forward = -sign * r.Uniform(0, 0.12) * depth },
            < 0.85 => basis with
            {
                AngleDegrees = sign * r.Uniform(5, 30),
                RotationDegrees = r.Uniform(-5, 20),
                CoronalDegrees = r.Normal(-3, 6),
                Forward = -sign * r.Uniform(0.1, 0.4) * depth,
                Lateral = r.Normal(0, 0.1) * depth,
            },
            _ => basis with
            {
                AngleDegrees = sign * r.Uniform(10, 40),
                RotationDegrees = r.Uniform(-10, 40),
                CoronalDegrees = r.Normal(-4, 10),
                Forward = -sign * r.Uniform(0.5, 1.2) * depth,
                Lateral = (r.Chance(0.75) ? -1 : 1) * r.Uniform(0, 0.5) * depth,
                Distal = -r.Uniform(0, 0.6) * depth,
            },
        };
    }

    private static ElbowInjury Dislocation(ElbowInjury basis, CounterRandom r, double u, double k) => u switch
    {
        < 0.2 => basis with { Forward = -r.Uniform(6, 14) * k, Distal = -r.Uniform(0, 4) * k },
        < 0.9 => basis with
        {
            Forward = -r.Uniform(18, 32) * k,
            Distal = -r.Uniform(6, 24) * k,
            Lateral = r.Uniform(-3, 14) * k,
        },
        _ => basis with { Forward = r.Uniform(18, 28) * k, Distal = -r.Uniform(5, 20) * k, Lateral = r.Normal(0, 5) * k },
    };
}
