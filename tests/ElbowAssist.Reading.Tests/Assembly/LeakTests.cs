using CsCheck;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Testing;

namespace ElbowAssist.Reading.Tests.Assembly;

/// <summary>A withheld value leaves no trace, a refused film no measurement, and nothing comes out as NaN.</summary>
public sealed class LeakTests
{
    private const int Readings = 2000;

    [Fact]
    public void Withheld_LeavesNoTrace() =>
        Films.Random.Sample(
            input =>
            {
                var reading = Films.Quick.Assemble(input);
                var definitions = ViewMeasurements.Of(reading.View.Name).ToDictionary(m => m.Name, StringComparer.Ordinal);
                foreach (var withheld in reading.Measurements.Where(m => m.State == MeasurementState.Withheld))
                {
                    Assert.Null(withheld.Value);
                    Assert.Null(withheld.Redraw95);
                    Assert.Null(withheld.Zones);
                    Assert.NotEmpty(withheld.Reasons);
                    Assert.DoesNotContain(reading.Lines, l => l.Name == withheld.Name);
                    Assert.Equal(definitions[withheld.Name].Note, withheld.Note);
                    Assert.Contains(reading.Adequacy.CannotCarry, c => c.Name == withheld.Name);
                    Assert.DoesNotContain(withheld.Name, reading.Adequacy.CanCarry);
                    Assert.DoesNotContain(reading.Adequacy.Checks, c => c.Value is not null && c.Name == withheld.Name);
                    Assert.DoesNotContain(
                        reading.Adequacy.Checks,
                        c => c.Value is not null && withheld.Name == "flexion-angle" && c.Name.StartsWith("flexion.", StringComparison.Ordinal));
                }

                var given = reading.Measurements.Where(m => m.State != MeasurementState.Withheld).ToList();
                var circles = given.SelectMany(m => definitions[m.Name].Circles).ToHashSet(StringComparer.Ordinal);
                Assert.All(reading.Circles, c => Assert.Contains(c.Name, circles));
                Assert.All(reading.Lines, l => Assert.Contains(given, m => m.Name == l.Name));
                Assert.All(given, m => Assert.True(double.IsFinite(m.Value!.Value)));
                Assert.All(given, m => Assert.True(m.Redraw95!.Value.Low <= m.Redraw95.Value.High));
                Assert.All(reading.Lines, l => Assert.True(l.Point.IsFinite && Math.Abs(l.Direction.Length - 1) < 1e-9));
            },
            iter: Readings);

    [Fact]
    public void Refused_IsEmpty() =>
        Films.Random.Where(i => i.Checks.Count > 0 || i.View.Name == View.Unknown).Sample(
            input =>
            {
                var reading = Films.Quick.Assemble(input);
                Assert.True(reading.Adequacy.Refused);
                Assert.Empty(reading.Landmarks);
                Assert.Empty(reading.Lines);
                Assert.Empty(reading.Circles);
                Assert.Empty(reading.Measurements);
                Assert.Empty(reading.Evidence);
                Assert.Empty(reading.Prompts);
                Assert.NotEmpty(reading.Reasons);
            },
            iter: 300);

    [Fact]
    public void EveryReasonGiven_HasItsSentenceOnce() =>
        Films.Random.Sample(
            input =>
            {
                var reading = Films.Quick.Assemble(input);
                var told = reading.Reasons.Select(r => r.Code).ToList();
                Assert.Equal(told.Distinct(StringComparer.Ordinal), told);
                Assert.All(reading.Measurements.SelectMany(m => m.Reasons), r => Assert.Contains(r, told));
                Assert.All(reading.Adequacy.CannotCarry.SelectMany(c => c.Reasons), r => Assert.Contains(r, told));
                foreach (var text in reading.Reasons.Select(r => r.Text).Concat(reading.Measurements.Select(m => m.Note)))
                {
                    ForbiddenWords.AssertNone(text, "a reading");
                    Assert.DoesNotContain("reposition", text, StringComparison.OrdinalIgnoreCase);
                }
            },
            iter: 500);

    [Fact]
    public void EvidenceOfFatPads_DoesNotDependOnWhetherOneWasFound() =>
        Films.Random.Where(i => i.View.Name == View.Lateral).Sample(
            input =>
            {
                var without = input with { Landmarks = [.. input.Landmarks.Where(l => !l.Name.StartsWith("fatpad", StringComparison.Ordinal))] };
                Assert.Equal(Films.Quick.Assemble(input).Evidence, Films.Quick.Assemble(without).Evidence);
            },
            iter: 300);
}
