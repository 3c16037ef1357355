using System.Diagnostics;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Milliseconds by stage of one reading.</summary>
internal sealed class StageClock
{
    private readonly Dictionary<string, double> milliseconds = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, double> Milliseconds => milliseconds;

    /// <summary>Books time spent elsewhere.</summary>
    public void Book(string stage, TimeSpan time) => milliseconds[stage] = time.TotalMilliseconds;

    /// <summary>Runs a stage and books its time.</summary>
    public T Time<T>(string stage, Func<T> work)
    {
        var started = Stopwatch.GetTimestamp();
        var result = work();
        milliseconds[stage] = milliseconds.GetValueOrDefault(stage) + Stopwatch.GetElapsedTime(started).TotalMilliseconds;
        return result;
    }
}
