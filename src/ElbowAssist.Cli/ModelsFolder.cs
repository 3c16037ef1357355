namespace ElbowAssist.Cli;

/// <summary>The folder that holds the model folders.</summary>
internal static class ModelsFolder
{
    /// <summary>Environment variable that names another folder than the one shipped with the program.</summary>
    public const string Variable = "ELBOWASSIST_MODELS";

    public static string Path => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named
        ? named
        : System.IO.Path.Combine(AppContext.BaseDirectory, "models");
}
