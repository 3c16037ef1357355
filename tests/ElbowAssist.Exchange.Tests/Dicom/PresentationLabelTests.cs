using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Exchange.Dicom.Format;
using ElbowAssist.Exchange.Dicom.Presentation;
using ElbowAssist.Exchange.Tests.Dicom.Support;
using ElbowAssist.Reading;
using ElbowAssist.Testing;
using SampleFilm = ElbowAssist.Exchange.Tests.Dicom.Support.SampleFilm;

namespace ElbowAssist.Exchange.Tests.Dicom;

/// <summary>Every word a presentation state puts on a film says that it is a proposal, and none reassures.</summary>
public sealed class PresentationLabelTests
{
    private static readonly DicomSource Source = new DicomFilmReader().Read(new SampleFilm().File()).Source;

    [Fact]
    public void EveryLabelAndLayer_SaysProposalSecondLook()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var reading = SampleReading.Of(seed);
            var state = DicomFile.Parse(PresentationState.Write(reading, Source, new(2026, 4, 1, 10, 17, 0, TimeSpan.Zero)), DicomLimits.Default).Dataset;

            var labels = state.Find(Tag.GraphicAnnotationSequence)!.Items
                .SelectMany(a => a.Find(Tag.TextObjectSequence)?.Items ?? []).Select(t => t.Text(Tag.UnformattedTextValue)!).ToList();
            var layers = state.Find(Tag.GraphicLayerSequence)!.Items.Select(l => l.Text(Tag.GraphicLayerDescription)!).ToList();

            Assert.All(labels.Concat(layers), l => Assert.StartsWith("Proposal, second look", l, StringComparison.Ordinal));
            Assert.All(labels.Concat(layers), l => ForbiddenWords.AssertNone(l, "the presentation state"));
            Assert.Contains(labels, l => l.Contains(Caution.LastSentence, StringComparison.Ordinal));
            if (reading.Adequacy.Refused)
            {
                Assert.Single(labels);
                Assert.DoesNotContain(state.Find(Tag.GraphicAnnotationSequence)!.Items, a => a.Find(Tag.GraphicObjectSequence) is not null);
            }
        }
    }
}
