using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Geometry;
using static ElbowAssist.Anatomy.Landmarks.LandmarkNames;

namespace ElbowAssist.Testing;

/// <summary>
/// An elbow drawn from a handful of sizes and angles on a film of any pose, mirror image and pixel spacing, so that tests
/// know every measurement by hand. Anatomical frame in millimetres: the humeral shaft axis runs distally through the
/// fossa roof, the origin; a point is (distance to the anterior or lateral side, distance distally).
/// </summary>
public sealed record InventedElbow
{
    /// <summary>Anteroposterior width of the humeral shaft.</summary>
    public double W { get; init; } = 17;

    /// <summary>Departure of the anterior cortex at level 1 from the line through the others, parabolic from level 5; forward positive.</summary>
    public double Bow { get; init; }

    /// <summary>Centre of the capitellum, anterior of the shaft axis.</summary>
    public double CapitellumForward { get; init; } = 9;

    /// <summary>Centre of the capitellum, distal of the fossa roof.</summary>
    public double CapitellumDistal { get; init; } = 18;

    /// <summary>Capitellar radius.</summary>
    public double CapitellumRadius { get; init; } = 10;

    /// <summary>Radius of the medial trochlear lip.</summary>
    public double TrochleaRadius { get; init; } = 12;

    /// <summary>Distance of the trochlear centre in front of and distal to the capitellar.</summary>
    public double TrochleaOffset { get; init; } = 1;

    /// <summary>First and last visible degree of the capitellar rim, e.g. −30 and 130 in an adult.</summary>
    public (int From, int To) Rim { get; init; } = (-30, 130);

    /// <summary>Flexion in degrees.</summary>
    public double Flexion { get; init; } = 90;

    /// <summary>Distance of the radial shaft axis from the capitellar centre, flexor side (lateral view) or lateral side (AP) positive.</summary>
    public double RadialOffset { get; init; } = 1;

    /// <summary>Degrees by which the head tilts off the shaft axis, flexor side or lateral positive.</summary>
    public double NeckTilt { get; init; }

    /// <summary>Distance of the radial head's middle from the capitellar centre along its surface, anterior positive.</summary>
    public double HeadForward { get; init; } = 1;

    /// <summary>Forward lean in degrees of the line square to the capitellar physis.</summary>
    public double PhysisTilt { get; init; } = 40;

    /// <summary>Degrees between the anterior fat pad and the shaft axis.</summary>
    public double FatPad { get; init; } = 12;

    /// <summary>Convention B of the Baumann angle: slope of the lateral condylar physis.</summary>
    public double PhysisSlope { get; init; } = 18;

    /// <summary>Carrying angle, valgus positive.</summary>
    public double Carrying { get; init; } = 12;

    /// <summary>Gap between trochlear lip and notch, millimetres.</summary>
    public double Gap { get; init; } = 2.5;

    /// <summary>Turn of the anatomical frame on the film in degrees.</summary>
    public double Turn { get; init; } = 20;

    /// <summary>Whether the film is a mirror image.</summary>
    public bool Mirrored { get; init; }

    /// <summary>Millimetres between columns.</summary>
    public double ColumnSpacing { get; init; } = 0.2;

    /// <summary>Millimetres between rows.</summary>
    public double RowSpacing { get; init; } = 0.2;

    /// <summary>Film position of the fossa roof, millimetres.</summary>
    public Point Place { get; init; } = new(120, 110);

    /// <summary>Positions in pixels of the film in the order of the lateral set; null for what this elbow does not show.</summary>
    public IReadOnlyList<Point?> Lateral() => Laid(LandmarkSet.Lateral, LateralPlaces());

    /// <summary>Positions in pixels of the film in the order of the AP set.</summary>
    public IReadOnlyList<Point?> Ap() => Laid(LandmarkSet.Ap, ApPlaces());

    /// <summary>Landmarks of a view with a covariance of equal size in every direction, in millimetres.</summary>
    public IReadOnlyList<Landmark> Landmarks(View view, double deviationMm = 0.4, LandmarkSource source = LandmarkSource.Model)
    {
        var set = LandmarkSet.Of(view) ?? throw new ArgumentException("The view has no landmarks.", nameof(view));
        var pixels = view == View.Lateral ? Lateral() : Ap();
        var spread = Covariance.Isotropic(deviationMm).Scaled(1 / ColumnSpacing, 1 / RowSpacing);
        return [.. set.Landmarks.Select((d, i) => pixels[i] is { } p
            ? new Landmark(d.Name, d.Kind, p, source == LandmarkSource.Model ? spread : null, 0.95, source)
            : new Landmark(d.Name, d.Kind, null, null, 0.03, source))];
    }

    private static (double Sine, double Cosine) Turned(double degrees) => Math.SinCos(degrees * Math.PI / 180);

    private Point?[] Laid(LandmarkSet set, Dictionary<string, (double Side, double Distal)> places) =>
        [.. set.Landmarks.Select(d => places.TryGetValue(d.Name, out var p) ? OnFilm(p.Side, p.Distal) : (Point?)null)];

    private Point OnFilm(double side, double distal)
    {
        var (sine, cosine) = Turned(Turn);
        var x = Mirrored ? side : -side;
        return new Point(
            (Place.X + (cosine * x) - (sine * distal)) / ColumnSpacing,
            (Place.Y + (sine * x) + (cosine * distal)) / RowSpacing);
    }

    private Dictionary<string, (double Side, double Distal)> LateralPlaces()
    {
        var places = new Dictionary<string, (double, double)>(StringComparer.Ordinal)
        {
            [HumerusFossaRoof] = (0, 0),
            [HumerusWaist] = (0, 0.3 * W),
        };
        double[] levels = [3.0, 2.5, 2.0, 1.5, 1.0];
        for (var i = 0; i < 5; i++)
        {
            var above = levels[i] - 1;
            places[HumerusAnterior(i + 1)] = ((W / 2) + (Bow * above * above / 4), -levels[i] * W);
            places[HumerusPosterior(i + 1)] = (-W / 2, -levels[i] * W);
            var (lipSine, lipCosine) = Turned((30 * i) - 30);
            places[TrochleaLip(i + 1)] = (
                CapitellumForward + TrochleaOffset + (TrochleaRadius * lipSine),
                CapitellumDistal + (TrochleaRadius * lipCosine));
        }

        for (var i = 0; i < 12; i++)
        {
            if ((30 * i >= Rim.From && 30 * i <= Rim.To) || (30 * i) - 360 >= Rim.From)
            {
                var (s, c) = Turned(30 * i);
                places[CapitellumRim(i + 1)] = (CapitellumForward + (CapitellumRadius * s), CapitellumDistal + (CapitellumRadius * c));
            }
        }

        Forearm(places, RadiusAnterior, RadiusPosterior, Flexion);
        var (flexSine, flexCosine) = Turned(Flexion);
        (double, double) At(double along, double flexor) => (
            CapitellumForward + (along * flexSine) + (flexor * flexCosine),
            CapitellumDistal + (along * flexCosine) - (flexor * flexSine));
        places[RadiusHeadAnterior] = At(12, HeadForward + 11);
        places[RadiusHeadPosterior] = At(12, HeadForward - 11);
        places[UlnaCoronoid] = At(8, -2);
        places[UlnaOlecranon] = At(-16, -4);
        for (var i = 0; i < 3; i++)
        {
            places[UlnaPosterior(i + 1)] = At(10 + (2 * W * (i + 1)), -22);
        }

        for (var i = 0; i < 4; i++)
        {
            var (s, c) = Turned(Flexion - 80 - (35 * i));
            var gap = TrochleaRadius + Gap + Math.Abs(i - 1);
            places[UlnaNotch(i + 1)] = (CapitellumForward + TrochleaOffset + (gap * s), CapitellumDistal + (gap * c));
        }

        var (physisSine, physisCosine) = Turned(PhysisTilt);
        var middle = (Side: CapitellumForward * 0.8, Distal: CapitellumDistal * 0.6);
        places[CapitellumPhysisAnterior] = (middle.Side + (8 * physisCosine), middle.Distal - (8 * physisSine));
        places[CapitellumPhysisPosterior] = (middle.Side - (8 * physisCosine), middle.Distal + (8 * physisSine));
        var (padSine, padCosine) = Turned(FatPad);
        places[FatPadAnteriorBase] = (W / 2, -W);
        places[FatPadAnteriorTip] = ((W / 2) + (15 * padSine), -W + (15 * padCosine));
        places[FatPadPosteriorTip] = (-W * 0.7, -0.3 * W);
        return places;
    }

    private Dictionary<string, (double Side, double Distal)> ApPlaces()
    {
        var places = new Dictionary<string, (double, double)>(StringComparer.Ordinal)
        {
            [HumerusFossaRoof] = (0, 0),
            [HumerusEpicondyleLateral] = (1.6 * W, 0.6 * W),
            [HumerusEpicondyleMedial] = (-1.9 * W, 0.6 * W),
            [CapitellumEdgeLateral] = (CapitellumForward + CapitellumRadius, CapitellumDistal),
            [CapitellumEdgeMedial] = (CapitellumForward - CapitellumRadius, CapitellumDistal),
            [LandmarkNames.CapitellumDistal] = (CapitellumForward, CapitellumDistal + CapitellumRadius),
            [TrochleaEdgeMedial] = (-1.3 * W, CapitellumDistal),
        };
        double[] levels = [3.5, 2.75, 2.0, 1.25];
        double[] half = [0.6, 0.6, 0.65, 0.9];
        for (var i = 0; i < 4; i++)
        {
            places[HumerusLateral(i + 1)] = (half[i] * W, -levels[i] * W);
            places[HumerusMedial(i + 1)] = (-half[i] * W, -levels[i] * W);
        }

        var (slopeSine, slopeCosine) = Turned(PhysisSlope);
        places[CapitellumPhysisLateral] = (CapitellumForward + (8 * slopeCosine), 8 - (8 * slopeSine));
        places[CapitellumPhysisMedial] = (CapitellumForward - (8 * slopeCosine), 8 + (8 * slopeSine));
        Forearm(places, RadiusLateral, RadiusMedial, Carrying);
        var (sine, cosine) = Turned(Carrying);
        places[RadiusHeadLateral] = (CapitellumForward + (12 * sine) + (11 * cosine), CapitellumDistal + (12 * cosine) - (11 * sine));
        places[RadiusHeadMedial] = (CapitellumForward + (12 * sine) - (11 * cosine), CapitellumDistal + (12 * cosine) + (11 * sine));
        for (var i = 0; i < 3; i++)
        {
            var along = 2 * W * (i + 1);
            places[UlnaLateral(i + 1)] = (-10 + (along * sine) + (8 * cosine), CapitellumDistal + (along * cosine) - (8 * sine));
            places[UlnaMedial(i + 1)] = (-10 + (along * sine) - (8 * cosine), CapitellumDistal + (along * cosine) + (8 * sine));
        }

        return places;
    }

    // The radius: shaft axis at RadialOffset from the capitellar centre, the neck turned off it about the shaft's first level.
    private void Forearm(
        Dictionary<string, (double Side, double Distal)> places, Func<int, string> positive, Func<int, string> negative, double degrees)
    {
        var (sine, cosine) = Turned(degrees);
        var (tiltSine, tiltCosine) = Turned(NeckTilt);
        double[] along = [25, 31, 56, 69];
        for (var i = 0; i < 4; i++)
        {
            var back = Math.Max(0, 56 - along[i]);
            var (on, off) = back > 0 ? (56 - (back * tiltCosine), RadialOffset + (back * tiltSine)) : (along[i], RadialOffset);
            var half = i < 2 ? 6.5 : 7.5;
            (double Side, double Distal) At(double flexor) => (
                CapitellumForward + (on * sine) + (flexor * cosine), CapitellumDistal + (on * cosine) - (flexor * sine));
            places[positive(i + 1)] = At(off + half);
            places[negative(i + 1)] = At(off - half);
        }
    }
}
