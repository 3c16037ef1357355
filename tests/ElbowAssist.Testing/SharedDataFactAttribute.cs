using Xunit;

namespace ElbowAssist.Testing;

/// <summary>
/// A fact that looks at data kept beside the checkout, in <c>../shared</c>, and is skipped where that is missing: such
/// data are never part of the project, and the project builds and tests without them.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class SharedDataFactAttribute : FactAttribute
{
    /// <summary>Skips the test unless the path exists.</summary>
    /// <param name="relativePath">Path below the shared folder.</param>
    public SharedDataFactAttribute(string relativePath)
    {
        if (SharedData.Find(relativePath) is null)
        {
            Skip = $"There is no ../shared/{relativePath} beside this checkout.";
        }
    }
}
