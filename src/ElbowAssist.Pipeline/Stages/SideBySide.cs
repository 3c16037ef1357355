using System.Runtime.ExceptionServices;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>Runs the looks at a film on several threads; their results stand in the order of the looks, whoever is first.</summary>
internal static class SideBySide
{
    /// <exception cref="OperationCanceledException">Cancelled between looks.</exception>
    public static IReadOnlyList<T> Run<T>(int count, int threads, Func<int, T> look, CancellationToken cancellation)
    {
        var results = new T[count];
        try
        {
            Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation }, i => results[i] = look(i));
        }
        catch (AggregateException e)
        {
            ExceptionDispatchInfo.Capture(e.InnerExceptions[0]).Throw();
        }

        return results;
    }
}
