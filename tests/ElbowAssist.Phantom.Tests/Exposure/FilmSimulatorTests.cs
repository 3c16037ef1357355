using ElbowAssist.Anatomy;
using ElbowAssist.Phantom.Exposure.Field;
using ElbowAssist.Phantom.Exposure.Settings;
using ElbowAssist.Phantom.Pose;

namespace ElbowAssist.Phantom.Tests.Exposure;

public sealed class FilmSimulatorTests
{
    private const int Size = 96;

    [Theory]
    [InlineData(View.Lateral)]
    [InlineData(View.Ap)]
    [InlineData(View.Oblique)]
    public void SameSeed_SameFilm_AndAnotherSeedAnother(View view)
    {
        var first = new FilmSimulator().Simulate(12, view, new SimulationOptions(), Size);
        var second = new FilmSimulator().Simulate(12, view, new SimulationOptions(), Size);
        var other = new FilmSimulator().Simulate(13, view, new SimulationOptions(), Size);
        Assert.Equal(first.Pixels, second.Pixels);
        Assert.Equal(first.ExposureFigures, second.ExposureFigures);
        Assert.NotEqual(first.Pixels, other.Pixels);
    }

    [Fact]
    public void Landmarks_OffTheExposedField_HaveNoPosition()
    {
        var hidden = 0;
        foreach (var seed in Enumerable.Range(0, 24))
        {
            var film = new FilmSimulator().Simulate((ulong)seed, View.Lateral, new SimulationOptions { Adequacy = Adequacy.Poor }, Size);
            var field = new ExposedField(film.Exposure, Size, Size, film.PixelMm);
            Assert.All(film.Truth.Landmarks.Where(l => l.Position is not null), l => Assert.True(field.Contains(l.Position!.Value)));
            hidden += film.Exposure.Field.Shape != FieldShape.Full ? film.Truth.Landmarks.Count(l => l.Position is null) : 0;
        }

        Assert.True(hidden > 20);
    }

    [Fact]
    public void Views_OfOneSeed_AreOfOnePatient()
    {
        var lateral = new FilmSimulator().Simulate(77, View.Lateral, new SimulationOptions(), Size).Truth;
        var ap = new FilmSimulator().Simulate(77, View.Ap, new SimulationOptions(), Size).Truth;
        Assert.Equal((lateral.AgeMonths, lateral.Sex, lateral.Side), (ap.AgeMonths, ap.Sex, ap.Side));
    }

    [Fact]
    public void ImpossibleSize_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new FilmSimulator().Simulate(1, View.Ap, new SimulationOptions(), 20));
}
