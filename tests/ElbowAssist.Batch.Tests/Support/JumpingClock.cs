namespace ElbowAssist.Batch.Tests.Support;

/// <summary>A clock whose time of day is set to and fro while its seconds run on.</summary>
internal sealed class JumpingClock : TimeProvider
{
    private long ticks;

    public DateTimeOffset TimeOfDay { get; set; } = DateTimeOffset.UnixEpoch;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public void Pass(TimeSpan time) => ticks += time.Ticks;

    public override long GetTimestamp() => ticks;

    public override DateTimeOffset GetUtcNow() => TimeOfDay;
}
