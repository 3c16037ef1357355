namespace ElbowAssist.Cli;

/// <summary>Something the user can mend, said in one sentence.</summary>
internal sealed class UserErrorException : Exception
{
    public UserErrorException(string message, ExitCode code = ExitCode.Failed)
        : base(message) => Code = code;

    public ExitCode Code { get; }
}
