using BenchmarkDotNet.Attributes;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Reading.Studies;
using ElbowAssist.Testing;

namespace ElbowAssist.Benchmarks;

/// <summary>Lateral and AP of one elbow from landmarks to a study: every measurement with 2 000 draws of the joint covariance.</summary>
[MemoryDiagnoser]
public class StudyBenchmark
{
    private static readonly ToolIdentity Tool = new("benchmarks", "0");
    private readonly ReadingInput lateral = Film(View.Lateral);
    private readonly ReadingInput ap = Film(View.Ap);

    [Benchmark]
    public Study TwoViews() => StudyAssembler.Assemble(new StudyInput
    {
        Tool = Tool,
        Films =
        [
            new StudyFilm("lateral", ReadingAssembler.Default.Assemble(lateral), []),
            new StudyFilm("ap", ReadingAssembler.Default.Assemble(ap), []),
        ],
    });

    private static ReadingInput Film(View view) => new()
    {
        Tool = Tool,
        Image = new ImageFacts("film.png", 1200, 1200, 0.2, 0.2, "option", new string('1', 64)),
        View = new ViewFinding(view, new Dictionary<string, double>(StringComparer.Ordinal), 3),
        Side = Side.Left,
        Patient = new Patient(40 * 12, Sex.Female),
        Context = FilmContext.Acute,
        Landmarks = new InventedElbow().Landmarks(view, 0.1, LandmarkSource.Model),
        Statements = new ReaderStatements(FullExtensionAndSupination: true),
    };
}
