namespace ElbowAssist.Reading.Tests.Walks;

/// <summary>A clock that a test moves by hand.</summary>
internal sealed class FixedClock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2030, 1, 1, 8, 0, 0, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;

    public void Pass(int seconds) => Now = Now.AddSeconds(seconds);
}
