namespace ElbowAssist.Architecture;

/// <summary>The checkout the tests run from.</summary>
internal static class Checkout
{
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
