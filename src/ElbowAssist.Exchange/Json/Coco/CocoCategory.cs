using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Exchange.Json.Coco;

/// <summary>A COCO category: one view of the elbow with its landmarks in their fixed order.</summary>
internal sealed record CocoCategory(int Id, string Name, LandmarkSet Set)
{
    public static IReadOnlyList<CocoCategory> All { get; } =
    [
        new(1, "elbow-lateral", LandmarkSet.Lateral),
        new(2, "elbow-ap", LandmarkSet.Ap),
    ];

    public static CocoCategory Of(View view) =>
        All.FirstOrDefault(c => c.Set.View == view) ??
        throw new ArgumentException("Only a lateral or AP view has landmarks.", nameof(view));

    /// <summary>Links between neighbours of each numbered family, as keypoint numbers counted from 1.</summary>
    public IEnumerable<(int From, int To)> Skeleton()
    {
        for (var i = 1; i < Set.Landmarks.Count; i++)
        {
            if (Family(Set.Landmarks[i - 1].Name) is { } family && family == Family(Set.Landmarks[i].Name))
            {
                yield return (i, i + 1);
            }
        }
    }

    private static string? Family(string name)
    {
        var dot = name.LastIndexOf('.');
        return char.IsAsciiDigit(name[^1]) ? name[..dot] : null;
    }
}
