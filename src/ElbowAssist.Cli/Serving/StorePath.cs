namespace ElbowAssist.Cli.Serving;

/// <summary>The file in which studies are kept.</summary>
internal static class StorePath
{
    /// <summary>Where the desktop keeps a user's data, as the XDG Base Directory Specification says: not in the program's folder.</summary>
    public static string Default
    {
        get
        {
            var data = Environment.GetEnvironmentVariable("XDG_DATA_HOME") is { Length: > 0 } named
                ? named
                : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local", "share");
            return Path.Combine(data, "elbowassist", "studies.db");
        }
    }
}
