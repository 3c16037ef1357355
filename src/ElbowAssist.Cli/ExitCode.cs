namespace ElbowAssist.Cli;

/// <summary>How a run ended. The worst film decides, in the order 0, 3, 2, 1.</summary>
internal enum ExitCode
{
    /// <summary>Every film got a reading.</summary>
    Done = 0,

    /// <summary>Failure: the command line, the installation or an output.</summary>
    Failed = 1,

    /// <summary>A file cannot be decoded or exceeds a limit.</summary>
    Unreadable = 2,

    /// <summary>A film was refused; its reading says why.</summary>
    Refused = 3,
}

internal static class ExitCodes
{
    public static ExitCode Worse(this ExitCode one, ExitCode other) => Rank(one) >= Rank(other) ? one : other;

    private static int Rank(ExitCode code) => code switch
    {
        ExitCode.Done => 0,
        ExitCode.Refused => 1,
        ExitCode.Unreadable => 2,
        _ => 3,
    };
}
