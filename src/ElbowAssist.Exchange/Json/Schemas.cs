using System.Reflection;

namespace ElbowAssist.Exchange.Json;

/// <summary>The JSON Schemas (2020-12) of the project's files, as shipped in the folder <c>schemas</c> of the package.</summary>
public static class Schemas
{
    /// <summary>Schema of <c>elbowassist/reading/1</c>.</summary>
    public static string Reading { get; } = Load("reading-1");

    /// <summary>Schema of <c>elbowassist/truth/1</c>.</summary>
    public static string Truth { get; } = Load("truth-1");

    /// <summary>Schema of <c>elbowassist/study/1</c>; it refers to the schema of a reading.</summary>
    public static string Study { get; } = Load("study-1");

    /// <summary>Schema of the sidecar <c>&lt;film file&gt;.info.json</c>.</summary>
    public static string Sidecar { get; } = Load("sidecar-1");

    private static string Load(string name)
    {
        var resource = $"ElbowAssist.Exchange.Schemas.{name}.schema.json";
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource) ??
            throw new InvalidOperationException($"The assembly lacks {resource}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
