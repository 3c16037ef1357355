using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Merging;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;

namespace ElbowAssist.Fuzzing;

/// <summary>What image and networks might say of a film: two landmarks, one of them in two places.</summary>
internal static class SampleProposals
{
    public static ProposedFilm Film(FilmReading reading)
    {
        var model = new ModelIdentity("sample", "1", new string('0', 64));
        var figures = new Dictionary<string, double>(StringComparer.Ordinal) { ["blur"] = 0.5 };
        var place = new Point(10, 20);
        return new(reading.Image, View.Lateral, Side.Left, new Patient(100, Sex.Female), FilmContext.Acute, new ReaderStatements(), new FilmProposals
        {
            Image = figures,
            View = new ViewProposal(model, new Dictionary<string, double>(StringComparer.Ordinal) { ["lateral"] = 1 }, 5),
            Landmarks = new LandmarkProposals(
                model, View.Lateral, new Similarity(1, 0, new Vector(1, 2), false), 5,
                [
                    new MergedProposal("humerus.waist", place, new Covariance(1, 0, 1), 0.9, 0.5, Covariance.Zero, null, []),
                    new MergedProposal("humerus.fossa.roof", place, null, 0.9, 0.5, Covariance.Zero, new TwoPlaces(place, new Point(40, 20), 0.3), []),
                ],
                null, [0.5, 1])
            {
                Exposure = figures,
            },
        });
    }
}
