using CsCheck;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Testing;

namespace ElbowAssist.Reading.Tests.Assembly;

/// <summary>Inputs of readings: one adult film on which everything can be measured, and random ones on which much cannot.</summary>
internal static class Films
{
    public static ReadingAssembler Quick { get; } = new(
        Limits.AdequacyLimits.Default, Anatomy.Measurements.RedrawOptions.Default with { Draws = 200 });

    public static ReadingInput Adult(View view, InventedElbow? elbow = null, double deviationMm = 0.1) => new()
    {
        Tool = new ToolIdentity("elbowassist", "0.0"),
        Models = [new ModelIdentity("invented", "1", new string('0', 64))],
        Image = new ImageFacts("film.png", 1200, 1200, 0.2, 0.2, "option", new string('1', 64)),
        View = new ViewFinding(view, new Dictionary<string, double>(StringComparer.Ordinal), 3),
        Side = Side.Left,
        Patient = new Patient(40 * 12, Sex.Female),
        Context = FilmContext.Acute,
        Landmarks = (elbow ?? new InventedElbow()).Landmarks(view, deviationMm),
        Statements = new ReaderStatements(FullExtensionAndSupination: true),
    };

    public static Measurement Find(this FilmReading reading, string name) => reading.Measurements.Single(m => m.Name == name);

    /// <summary>Random films: landmarks lost, shifted, uncertain, contradictory; any age, context, view error and spacing.</summary>
    public static Gen<ReadingInput> Random { get; } =
        from view in Gen.Int[0, 9].Select(i => i switch { < 5 => View.Lateral, < 8 => View.Ap, 8 => View.Oblique, _ => View.Unknown })
        from spread in Gen.Double[0.01, 6]
        from lost in Gen.Double[0, 0.6]
        from error in Gen.OneOf(Gen.Const((double?)null), Gen.Double[-40, 40].Select(d => (double?)d))
        from age in Gen.OneOf(Gen.Const((int?)null), Gen.Int[0, 1000].Select(a => (int?)a))
        from context in Gen.Enum<FilmContext>()
        from spacing in Gen.OneOf(Gen.Const((double?)null), Gen.Double[0.05, 0.5].Select(d => (double?)d))
        from maturity in Gen.Enum<Maturity>()
        from extended in Gen.Bool
        from reader in Gen.Bool
        from unusable in Gen.Bool
        from refused in Gen.Int[0, 9]
        from flexion in Gen.Double[0, 130]
        from forward in Gen.Double[-15, 20]
        from radial in Gen.Double[-14, 14]
        from whole in Gen.Bool
        from seed in Gen.Int
        select Input(view, spread, lost, error, age, context, spacing, maturity, extended, reader, unusable, refused == 0,
            new InventedElbow
            {
                Flexion = flexion,
                CapitellumForward = forward,
                RadialOffset = radial,
                Rim = whole ? (-150, 180) : (-30, 130),
            },
            seed);

    private static ReadingInput Input(
        View view, double spread, double lost, double? error, int? age, FilmContext context, double? spacing, Maturity maturity,
        bool extended, bool reader, bool unusable, bool refused, InventedElbow elbow, int seed)
    {
        var random = new Random(seed);
        var source = reader ? LandmarkSource.Reader : LandmarkSource.Model;
        IReadOnlyList<Landmark> landmarks = LandmarkSet.Of(view) is null
            ? []
            : [.. elbow.Landmarks(view, spread, source).Select(l => Spoiled(l, lost, random))];
        var adult = Adult(View.Lateral);
        return adult with
        {
            View = adult.View with { Name = view, ErrorDegrees = error },
            Image = adult.Image with { RowSpacingMm = spacing, ColumnSpacingMm = spacing * 1.1 },
            Patient = new Patient(age, age % 2 == 0 ? Sex.Male : null),
            Context = context,
            Landmarks = landmarks,
            Statements = new ReaderStatements(extended, random.Next(3) == 0 ? false : null, random.Next(4) == 0, maturity),
            Unusable = unusable && landmarks.Count > 0
                ? [new UnusableLandmark(landmarks[random.Next(landmarks.Count)].Name, "passes-disagree")]
                : [],
            Checks = refused ? [new AdequacyCheck("elbow", 0.1, 0.5, false, "not-an-elbow")] : [],
        };
    }

    private static Landmark Spoiled(Landmark landmark, double lost, Random random) => random.NextDouble() switch
    {
        var u when u < lost / 3 => landmark with { Position = null, Covariance = null, Visibility = 0.01 },
        var u when u < lost / 2 => landmark with { Visibility = 0.2 },
        var u when u < lost / 1.8 => landmark with { Position = new Point(double.NaN, 5) },
        var u when u < lost / 1.7 => landmark with { Position = new Point(400, 400) },
        var u when u < lost / 1.6 => landmark with { Covariance = new Covariance(-1, 0, double.PositiveInfinity) },
        _ => landmark,
    };
}
