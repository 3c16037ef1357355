using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Growth;
using ElbowAssist.Phantom.Injury;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Sampling;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Phantom;

/// <summary>Simulated patients and their projected films. A seed fixes the patient; each view draws from a stream of its own.</summary>
public static class Simulation
{
    private const ulong PatientStream = 1;
    private const ulong ShapeStream = 2;
    private const ulong InjuryStream = 3;
    private const ulong FixationStream = 4;
    private const ulong FilmStream = 16;

    /// <summary>Draws a patient.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="options">Ages and the rest of what may be drawn.</param>
    public static ElbowCase Sample(ulong seed, SimulationOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var random = new CounterRandom(seed, PatientStream);
        var sex = random.Chance(0.5) ? Sex.Female : Sex.Male;
        var side = random.Chance(0.5) ? Side.Left : Side.Right;
        var age = Age(random, options);
        var shape = ChildShapeSampler.Sample(new CounterRandom(seed, ShapeStream), sex, age);
        var injury = InjurySampler.Sample(new CounterRandom(seed, InjuryStream), shape, age, options);
        var fixation = InjurySampler.Fix(new CounterRandom(seed, FixationStream), age, ref injury);
        return new ElbowCase(seed, (int)(age * 12), sex, side, Effusion.Applied(shape, injury))
        {
            Injury = injury,
            Fixation = fixation,
        };
    }

    /// <summary>Projects one square film of a patient, the elbow anywhere on it as films come.</summary>
    /// <param name="elbow">Patient.</param>
    /// <param name="view">Lateral, AP or oblique.</param>
    /// <param name="size">Pixels along each side.</param>
    /// <param name="options">How films are positioned.</param>
    public static Projection Project(ElbowCase elbow, View view, int size, SimulationOptions options)
    {
        var setup = FilmSetup.OfFilm(elbow, view, size, options);
        return new Projection(setup.Render(), setup.Truth());
    }

    /// <summary>Projects one square film of a patient in a given pose, the joint in its middle.</summary>
    /// <param name="elbow">Patient.</param>
    /// <param name="view">Lateral or AP.</param>
    /// <param name="pose">How the elbow lies in the beam.</param>
    /// <param name="size">Pixels along each side.</param>
    public static Projection Project(ElbowCase elbow, View view, ElbowPose pose, int size)
    {
        ArgumentNullException.ThrowIfNull(elbow);
        ArgumentNullException.ThrowIfNull(pose);
        var setup = FilmSetup.OfPose(elbow, view, pose, size);
        return new Projection(setup.Render(), setup.Truth());
    }

    /// <summary>The truth of such a film without walking any ray.</summary>
    /// <param name="elbow">Patient.</param>
    /// <param name="view">Lateral or AP.</param>
    /// <param name="pose">How the elbow lies in the beam.</param>
    /// <param name="size">Pixels along each side.</param>
    public static FilmTruth Truth(ElbowCase elbow, View view, ElbowPose pose, int size)
    {
        ArgumentNullException.ThrowIfNull(elbow);
        ArgumentNullException.ThrowIfNull(pose);
        return FilmSetup.OfPose(elbow, view, pose, size).Truth();
    }

    /// <summary>
    /// Where the range reaches from childhood into adult life, three fifths of the patients are growing, spread evenly over
    /// bands of age: the youngest elbows differ most from the rest and would else be rare.
    /// </summary>
    private static double Age(CounterRandom random, SimulationOptions options)
    {
        const double grown = 17;
        var (from, to) = (options.FromAgeYears, options.ToAgeYears);
        if (from >= grown || to <= grown || random.Chance(0.4))
        {
            return random.Uniform(from >= grown || to <= grown ? from : grown, to);
        }

        double[] edges = [from, .. new double[] { 2, 5, 10 }.Where(e => e > from), grown];
        var band = (int)(random.Uniform() * (edges.Length - 1));
        return random.Uniform(edges[band], edges[band + 1]);
    }

    /// <summary>The random stream of a view of a patient; what happens to the film later may draw from it too.</summary>
    /// <param name="elbow">Patient.</param>
    /// <param name="view">View.</param>
    /// <param name="purpose">Number of the stage that draws, below 1000.</param>
    public static CounterRandom Stream(ElbowCase elbow, View view, int purpose)
    {
        ArgumentNullException.ThrowIfNull(elbow);
        return new CounterRandom(elbow.Seed, FilmStream + ((ulong)view * 1000) + (ulong)purpose);
    }
}
