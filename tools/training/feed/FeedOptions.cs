using System.Globalization;
using ElbowAssist.Anatomy;

namespace ElbowAssist.Feed;

/// <summary>What the feed was asked for.</summary>
/// <param name="Gpu">True to render on a GPU.</param>
/// <param name="Views">Shares of the views; a null view stands for near misses.</param>
/// <param name="Crop">True for canonical crops, false for whole films.</param>
/// <param name="Size">Pixels along each side.</param>
/// <param name="Batch">Films per frame.</param>
/// <param name="FirstSeed">Seed of the first film.</param>
/// <param name="Step">Step from seed to seed.</param>
/// <param name="Count">Films in all, or null for no end.</param>
/// <param name="Threads">Threads that prepare films.</param>
/// <param name="SolidBones">True for bones without shell and marrow, to see what inner structure is worth.</param>
internal sealed record FeedOptions(
    bool Gpu,
    IReadOnlyList<(View? View, double Share)> Views,
    bool Crop,
    int Size,
    int Batch,
    ulong FirstSeed,
    ulong Step,
    long? Count,
    int Threads,
    bool SolidBones)
{
    /// <summary>Reads "lateral=0.4,ap=0.4,near-miss=0.2".</summary>
    /// <exception cref="FormatException">A view is unknown or a share is no positive number.</exception>
    public static IReadOnlyList<(View? View, double Share)> ParseViews(string text) =>
        [.. text.Split(',').Select(part =>
        {
            var pair = part.Split('=');
            if (pair.Length != 2 || !double.TryParse(pair[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var share) || share < 0)
            {
                throw new FormatException($"'{part}' is not a view with its share, such as lateral=0.4.");
            }

            View? view = pair[0] switch
            {
                "lateral" => View.Lateral,
                "ap" => View.Ap,
                "oblique" => View.Oblique,
                "near-miss" => null,
                _ => throw new FormatException($"'{pair[0]}' is none of lateral, ap, oblique, near-miss."),
            };
            return (view, share);
        })];
}
