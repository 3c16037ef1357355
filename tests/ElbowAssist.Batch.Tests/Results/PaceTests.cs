using ElbowAssist.Batch.Running;
using ElbowAssist.Batch.Tests.Support;

namespace ElbowAssist.Batch.Tests.Results;

public sealed class PaceTests
{
    [Fact]
    public void ClockSetToAndFro_ChangesNeitherRateNorTimeLeft()
    {
        var clock = new JumpingClock();
        var pace = new Pace(clock);
        pace.Counted(100);
        pace.Skip();
        for (var i = 0; i < 19; i++)
        {
            clock.TimeOfDay += TimeSpan.FromDays(i % 2 == 0 ? 400 : -900);
            clock.Pass(TimeSpan.FromSeconds(0.5));
            pace.Book();
        }

        var now = pace.Now();
        Assert.Equal(20, now.Done);
        Assert.Equal(2, now.PerSecond!.Value, 1e-9);
        Assert.Equal(40, now.Left!.Value.TotalSeconds, 1e-9);
    }

    [Fact]
    public void Rate_ForgetsWhatIsLongAgo()
    {
        var clock = new JumpingClock();
        var pace = new Pace(clock);
        for (var i = 0; i < 200; i++)
        {
            clock.Pass(TimeSpan.FromSeconds(i < 100 ? 10 : 1));
            pace.Book();
        }

        Assert.Equal(1, pace.Now().PerSecond!.Value, 1e-9);
        Assert.Null(pace.Now().Left); // nobody has counted the films yet
    }
}
