namespace ElbowAssist.Testing;

/// <summary>The checkout the tests run from.</summary>
public static class Repository
{
    /// <summary>Full path of the folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ElbowAssist.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests must run from inside a checkout.");
    }
}
