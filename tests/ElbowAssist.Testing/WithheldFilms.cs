using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Geometry;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Testing;

/// <summary>
/// Readings of random elbows for tests that nothing withheld shows: some of everything, and pairs of different elbows on
/// which every measurement is withheld, so that whatever differs between their outputs has leaked from the landmarks.
/// </summary>
public static class WithheldFilms
{
    private static readonly ReadingAssembler Quick = new(AdequacyLimits.Default, RedrawOptions.Default with { Draws = 100 });

    /// <summary>A film on which some measurements are given and some withheld.</summary>
    public static FilmReading Mixed(int seed)
    {
        var random = new Random(seed);
        var view = random.Next(3) == 0 ? View.Ap : View.Lateral;
        return Quick.Assemble(Input(view, random, error: random.NextDouble() * 25, lost: random.NextDouble() * 0.4, bend: 30));
    }

    /// <summary>A film that a check leaves no measurement; its landmarks are random, everything else depends on the view alone.</summary>
    public static FilmReading AllWithheld(View view, int seed)
    {
        var random = new Random(seed);
        var input = Input(view, random, error: 3, lost: 0, bend: 15);
        return Quick.Assemble(input with
        {
            Checks = [new AdequacyCheck("landmark.share", 0.1, 0.2, false, "unlike-training")],
        });
    }

    private static ReadingInput Input(View view, Random random, double error, double lost, double bend)
    {
        var elbow = new InventedElbow
        {
            Flexion = 90 + (bend * ((2 * random.NextDouble()) - 1)),
            CapitellumForward = -15 + (35 * random.NextDouble()),
            RadialOffset = -14 + (28 * random.NextDouble()),
            Rim = random.Next(2) == 0 ? (-150, 180) : (-30, 130),
        };
        return new ReadingInput
        {
            Tool = new ToolIdentity("elbowassist", "0.0"),
            Models = [new ModelIdentity("invented", "1", new string('0', 64))],
            Image = new ImageFacts("film.png", 1200, 1200, 0.2, 0.2, "option", new string('1', 64)),
            View = new ViewFinding(view, new Dictionary<string, double>(StringComparer.Ordinal), error),
            Side = Side.Left,
            Patient = new Patient(40 * 12, Sex.Female),
            Context = FilmContext.Acute,
            Landmarks = [.. elbow.Landmarks(view, 0.1).Select(l => random.NextDouble() < lost * lost ? Lost(l) : l)],
        };
    }

    private static Landmark Lost(Landmark landmark) => landmark with { Position = null, Covariance = null, Visibility = 0.01 };
}
