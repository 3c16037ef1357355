using ElbowAssist.Reading.Limits;

namespace ElbowAssist.Cli;

/// <summary>The limits a run goes by.</summary>
internal static class LimitsFile
{
    /// <summary>Environment variable that names a file of limits in place of the one shipped with the program.</summary>
    public const string Variable = "ELBOWASSIST_LIMITS";

    /// <summary>The limits of the file that the variable names, or those of the project.</summary>
    /// <exception cref="UserErrorException">The file cannot be used.</exception>
    public static AdequacyLimits Read() =>
        Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named ? Read(named) : AdequacyLimits.Default;

    /// <summary>The limits of a file.</summary>
    /// <exception cref="UserErrorException">The file cannot be used.</exception>
    public static AdequacyLimits Read(string path)
    {
        try
        {
            using var file = File.OpenRead(path);
            return AdequacyLimits.Read(file);
        }
        catch (FormatException e)
        {
            throw new UserErrorException($"{path} cannot be used: {e.Message}", ExitCode.Unreadable);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"The limits in {path} cannot be opened; check the name and that it may be read.");
        }
    }
}
