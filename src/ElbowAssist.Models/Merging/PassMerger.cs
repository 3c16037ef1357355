using ElbowAssist.Geometry;

namespace ElbowAssist.Models.Merging;

/// <summary>
/// Merges passes over one film. The spread is the mean covariance within passes plus the covariance between them
/// (law of total variance); it is not divided by their number, because passes of one network over one film err together.
/// </summary>
public static class PassMerger
{
    /// <summary>A second place counts from this weight on (chosen so that one pass in four suffices).</summary>
    private const double CountingWeight = 0.25;

    /// <summary>Two places are apart if their distance exceeds this many standard deviations within a pass…</summary>
    private const double ApartInDeviations = 4;

    /// <summary>…and this many crop pixels, the width a heatmap cannot resolve.</summary>
    private const double ApartInCropPixels = 6;

    /// <summary>A pass sees a landmark if it thinks it likelier seen than not.</summary>
    private const double LikelySeen = 0.5;

    /// <summary>Crop pixels from the edge of a crop within which a landmark counts as cut off.</summary>
    private const double CropMargin = 8;

    /// <summary>Merges passes of one model.</summary>
    /// <param name="landmarks">Names in the order of the proposals.</param>
    /// <param name="passes">At least one pass.</param>
    public static IReadOnlyList<MergedProposal> Merge(IReadOnlyList<string> landmarks, IReadOnlyList<PlacedPass> passes)
    {
        ArgumentNullException.ThrowIfNull(landmarks);
        ArgumentNullException.ThrowIfNull(passes);
        if (passes.Count == 0)
        {
            throw new ArgumentException("At least one pass is needed.", nameof(passes));
        }

        return [.. landmarks.Select((name, i) => MergeOne(name, passes, i))];
    }

    private static MergedProposal MergeOne(string name, IReadOnlyList<PlacedPass> passes, int index)
    {
        var sayers = Sayers(passes, index);
        var visibility = sayers.Average(n => passes[n].Pass.Proposals[index].Visibility);
        var placed = sayers
            .Select(n => (Proposal: passes[n].Pass.Proposals[index], passes[n].CropToFilm))
            .Where(p => p.Proposal.Position.IsFinite)
            .ToList();
        if (placed.Count == 0)
        {
            return new MergedProposal(name, new Point(double.NaN, double.NaN), null, visibility, 0, default, null, sayers);
        }

        var points = placed.ConvertAll(p => p.CropToFilm.Apply(p.Proposal.Position));
        var mean = Mean(points);
        var between = points
            .Select(p => p - mean)
            .Aggregate(Covariance.Zero, (sum, d) => sum + new Covariance(d.X * d.X, d.X * d.Y, d.Y * d.Y)) * (1.0 / points.Count);
        var stated = placed.Where(p => p.Proposal.Spread is not null)
            .Select(p => p.CropToFilm.Apply(p.Proposal.Spread!.Value))
            .ToList();
        Covariance? within = stated.Count == 0 ? null : stated.Aggregate((a, b) => a + b) * (1.0 / stated.Count);
        var scale = placed.Average(p => p.CropToFilm.Scale);
        var spread = within is { } w ? w + between : placed.Count > 1 ? between : (Covariance?)null;
        return new MergedProposal(
            name, mean, spread, visibility, placed.Average(p => p.Proposal.Share), between,
            BetweenPasses(points, within, scale) ?? WithinHeatmaps(placed, mean, within, scale),
            sayers);
    }

    /// <summary>
    /// Passes that had a say on a landmark. Crops differ in what they show, and a pass whose crop ends before the place
    /// where others see the landmark is no witness that it is hidden.
    /// </summary>
    private static List<int> Sayers(IReadOnlyList<PlacedPass> passes, int index)
    {
        List<int> all = [.. Enumerable.Range(0, passes.Count)];
        var seeing = all.FindAll(n =>
            passes[n].Pass.Proposals[index] is { Visibility: >= LikelySeen, Position.IsFinite: true });
        if (seeing.Count == 0)
        {
            return all;
        }

        var place = Mean(seeing.ConvertAll(n => passes[n].CropToFilm.Apply(passes[n].Pass.Proposals[index].Position)));
        return all.FindAll(n => seeing.Contains(n) || passes[n].Shows(place, CropMargin));
    }

    /// <summary>Splits the places of the passes in two along their longest gap and looks how far the halves are apart.</summary>
    private static TwoPlaces? BetweenPasses(List<Point> points, Covariance? within, double scale)
    {
        if (points.Count < 2)
        {
            return null;
        }

        var (a, b) = Farthest(points);
        var near = points.Where(p => p.DistanceTo(a) <= p.DistanceTo(b)).ToList();
        var far = points.Where(p => p.DistanceTo(a) > p.DistanceTo(b)).ToList();
        if (far.Count == 0)
        {
            return null;
        }

        var (first, second) = near.Count >= far.Count ? (near, far) : (far, near);
        var weight = (double)second.Count / points.Count;
        var (one, other) = (Mean(first), Mean(second));
        return weight >= CountingWeight && Apart(one, other, within, scale) ? new TwoPlaces(one, other, weight) : null;
    }

    private static TwoPlaces? WithinHeatmaps(
        List<(Proposal Proposal, Similarity CropToFilm)> placed, Point mean, Covariance? within, double scale)
    {
        var seconds = placed
            .Where(p => p.Proposal.Second is not null)
            .Select(p => (Place: p.CropToFilm.Apply(p.Proposal.Second!.Value), p.Proposal.SecondShare))
            .ToList();
        var share = seconds.Sum(s => s.SecondShare);
        var total = share + placed.Sum(p => p.Proposal.Share);
        if (share <= 0 || share / total < CountingWeight)
        {
            return null;
        }

        var second = new Point(
            seconds.Sum(s => s.Place.X * s.SecondShare) / share, seconds.Sum(s => s.Place.Y * s.SecondShare) / share);
        return Apart(mean, second, within, scale) ? new TwoPlaces(mean, second, Math.Min(0.5, share / total)) : null;
    }

    private static bool Apart(Point a, Point b, Covariance? within, double scale)
    {
        var distance = a.DistanceTo(b);
        if (distance <= ApartInCropPixels * scale)
        {
            return false;
        }

        var deviation = within is { } w ? Math.Sqrt(Math.Max(0, w.Along(b - a))) : 0;
        return distance > ApartInDeviations * deviation;
    }

    private static (Point A, Point B) Farthest(List<Point> points)
    {
        var pair = (points[0], points[0]);
        for (var i = 0; i < points.Count; i++)
        {
            for (var j = i + 1; j < points.Count; j++)
            {
                if (points[i].DistanceTo(points[j]) > pair.Item1.DistanceTo(pair.Item2))
                {
                    pair = (points[i], points[j]);
                }
            }
        }

        return pair;
    }

    private static Point Mean(List<Point> points) => new(points.Average(p => p.X), points.Average(p => p.Y));
}
