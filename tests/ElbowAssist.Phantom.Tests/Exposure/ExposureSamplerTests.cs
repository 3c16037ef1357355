using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Exposure.Sampling;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Pose;
using ElbowAssist.Phantom.Rendering;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class ExposureSamplerTests
{
    private static readonly FilmContent Content = new(
        new PathImage(128, 128), View.Lateral, Side.Left, [new(64, 70), new(80, 72), new(66, 20), new(20, 80)], new(60, 60), 12, 1.2);

    [Fact]
    public void GoodFilms_HaveNoFault_AndHoldTheElbow()
    {
        foreach (var settings in Draw(Adequacy.Good))
        {
            Assert.Empty(settings.Faults);
            Assert.False(settings.Processing.Inverted);
            Assert.Null(settings.Second);
            Assert.Null(settings.Hand);
            Assert.InRange(settings.Detector.DoseMicrogray, 1, 12);
            var field = new ElbowAssist.Phantom.Exposure.Field.ExposedField(settings, 128, 128, 1.2);
            Assert.All(Content.Points, point => Assert.True(field.Contains(point)));
        }
    }

    [Fact]
    public void PoorFilms_HaveAtLeastOneFault() =>
        Assert.All(Draw(Adequacy.Poor), settings => Assert.NotEmpty(settings.Faults));

    [Fact]
    public void MixedFilms_AreMostlyWellMade_AndShowEveryFault()
    {
        var films = Draw(Adequacy.Mixed);
        Assert.InRange(films.Count(f => f.Faults.Count == 0) / (double)films.Count, 0.4, 0.8);
        Assert.Equal(FilmFaults.All.Order(StringComparer.Ordinal), films.SelectMany(f => f.Faults).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    // Published elbow technique: 50 to 70 kV; a cast may add a few.
    [Fact]
    public void TubeVoltage_StaysInTheRangeOfElbowTechnique() =>
        Assert.All(Draw(Adequacy.Mixed), settings => Assert.InRange(settings.Beam.Kilovolts, 50, 72));

    [Fact]
    public void Faults_DoWhatTheySay()
    {
        var films = Draw(Adequacy.Poor);
        Assert.All(films.Where(f => f.Faults.Contains(FilmFaults.Inverted)), f => Assert.True(f.Processing.Inverted));
        Assert.All(films.Where(f => f.Faults.Contains(FilmFaults.SecondFilm)), f => Assert.NotNull(f.Second));
        Assert.All(films.Where(f => f.Faults.Contains(FilmFaults.HelperHand)), f => Assert.NotNull(f.Hand));
        Assert.All(films.Where(f => f.Faults.Contains(FilmFaults.Cropped)), f => Assert.NotEqual(FieldShape.Full, f.Field.Shape));
        var dim = films.Where(f => f.Faults.Contains(FilmFaults.Underexposed)).Average(f => f.Detector.DoseMicrogray);
        Assert.True(dim < films.Where(f => !f.Faults.Contains(FilmFaults.Underexposed)).Average(f => f.Detector.DoseMicrogray) / 4);
    }

    [Fact]
    public void SameStream_SameSettings()
    {
        var first = ExposureSampler.Sample(new CounterRandom(9, 4), Adequacy.Mixed, Content);
        var second = ExposureSampler.Sample(new CounterRandom(9, 4), Adequacy.Mixed, Content);
        Assert.Equal(first.NoiseSeed, second.NoiseSeed);
        Assert.Equal(first.Beam, second.Beam);
        Assert.Equal(first.Processing, second.Processing);
        Assert.Equal(first.Field, second.Field);
        Assert.Equal(first.Annotations, second.Annotations);
    }

    private static List<ExposureSettings> Draw(Adequacy adequacy) =>
        [.. Enumerable.Range(0, 400).Select(seed => ExposureSampler.Sample(new CounterRandom((ulong)seed, 4), adequacy, Content))];
}
