namespace ElbowAssist.Batch.Running;

/// <summary>How far a batch is.</summary>
/// <param name="Films">Films of the source, or null while they are being counted.</param>
/// <param name="Done">Films with a result, those of earlier runs included.</param>
/// <param name="PerSecond">Results of late by second; null before the first.</param>
/// <param name="Left">Time left at that rate; null where it cannot be told.</param>
public sealed record BatchProgress(int? Films, int Done, double? PerSecond, TimeSpan? Left);

/// <summary>How a batch ended.</summary>
public sealed record BatchOutcome
{
    /// <summary>Films of the source.</summary>
    public required int Films { get; init; }

    /// <summary>Films whose result was there before.</summary>
    public required int Before { get; init; }

    /// <summary>Films whose result came now.</summary>
    public required int Now { get; init; }

    /// <summary>Names of films that could not be opened, at most a hundred.</summary>
    public required IReadOnlyList<string> NotOpened { get; init; }

    /// <summary>Films, at most a hundred, whose file became another after it was submitted and before it was read.</summary>
    public required IReadOnlyList<string> Changed { get; init; }

    /// <summary>Names of films that got no result though they were tried again and again, at most a hundred.</summary>
    public required IReadOnlyList<string> GivenUp { get; init; }

    /// <summary>Whether it was stopped before it was through.</summary>
    public required bool Stopped { get; init; }

    /// <summary>Whether every film has its result.</summary>
    public bool Complete => !Stopped && NotOpened.Count == 0 && Changed.Count == 0 && GivenUp.Count == 0;
}
