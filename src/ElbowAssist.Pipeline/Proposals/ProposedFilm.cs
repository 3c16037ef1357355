using ElbowAssist.Anatomy;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Pipeline.Proposals;

/// <summary>A film with what was proposed on it: the content of <c>elbowassist/proposals/1</c>, from which models are calibrated.</summary>
/// <param name="Image">The film.</param>
/// <param name="StatedView">The view as stated, or null if it was to be recognised.</param>
/// <param name="Side">Side.</param>
/// <param name="Patient">Age and sex.</param>
/// <param name="Context">Why the film was taken.</param>
/// <param name="Statements">What a reader has said of the film.</param>
/// <param name="Proposals">What image and networks say.</param>
public sealed record ProposedFilm(
    ImageFacts Image, View? StatedView, Side Side, Patient Patient, FilmContext Context, ReaderStatements Statements,
    FilmProposals Proposals)
{
    /// <summary>Schema identifier of the serialised form.</summary>
    public const string SchemaId = "elbowassist/proposals/1";

    /// <summary>End of the names of files that hold proposals.</summary>
    public const string FileSuffix = ".proposals.json";

    /// <summary>What was known of the film beyond its pixels.</summary>
    public ReadOptions Options => new() { View = StatedView, Side = Side, Patient = Patient, Context = Context, Statements = Statements };
}
