namespace ElbowAssist.Testing;

/// <summary>Data beside the checkout, or beside a folder of checkouts.</summary>
public static class SharedData
{
    /// <summary>The full path of a file or folder under <c>../shared</c>, or null where it is missing.</summary>
    public static string? Find(string relativePath)
    {
        for (var folder = new DirectoryInfo(Repository.Root).Parent; folder is not null; folder = folder.Parent)
        {
            var path = Path.Combine(folder.FullName, "shared", relativePath);
            if (Path.Exists(path))
            {
                return path;
            }
        }

        return null;
    }
}
