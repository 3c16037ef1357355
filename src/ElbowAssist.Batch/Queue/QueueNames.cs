using ElbowAssist.Batch.Results;

namespace ElbowAssist.Batch.Queue;

/// <summary>
/// Names on the server. Work and results carry models and version, so that a worker never takes work for models it does
/// not have, and no result stands for that of another version.
/// </summary>
internal sealed class QueueNames(Recipe recipe)
{
    public const string Stream = "ELBOWASSIST_WORK";
    public const string Subjects = "elbowassist.work.>";
    public const string Results = "elbowassist-results";
    public const string Films = "elbowassist-films";

    // 64 bits tell apart whatever models a site will ever have.
    private readonly string mark = $"{recipe.Models[..16]}.{recipe.Pipeline.Replace('.', '-')}";

    public string Subject => $"elbowassist.work.{mark}";

    public string Consumer => $"workers-{mark.Replace('.', '-')}";

    public string Result(string content) => $"{mark}.{content}";

    public string EveryResult => $"{mark}.*";

    /// <summary>The content hash at the end of the name of a result.</summary>
    public static string ContentOf(string result) => result[(result.LastIndexOf('.') + 1)..];
}
