using System.Reflection;
using System.Security.Cryptography;

namespace ElbowAssist.Cli.Batches;

/// <summary>Version of the program with a mark of the build of everything a reading is made by: two builds are never mixed up.</summary>
internal static class PipelineVersion
{
    private static readonly Type[] Parts =
    [
        typeof(Geometry.Point), typeof(Anatomy.View), typeof(Reading.FilmReading), typeof(Imaging.Radiograph),
        typeof(Models.ModelSet), typeof(Pipeline.FilmReader), typeof(Exchange.Json.ReadingJson), typeof(Batch.Results.FilmResult),
    ];

    /// <summary>E.g. <c>0.1.0-3f9a2c71</c>. Builds are deterministic: the same sources give the same mark.</summary>
    public static string Text { get; } = $"{ThisTool.Identity.Version}-{Mark()}";

    private static string Mark()
    {
        var builds = Parts.Select(p => p.Module.ModuleVersionId).Append(Assembly.GetExecutingAssembly().ManifestModule.ModuleVersionId);
        return Convert.ToHexStringLower(SHA256.HashData([.. builds.SelectMany(b => b.ToByteArray())]))[..8];
    }
}
