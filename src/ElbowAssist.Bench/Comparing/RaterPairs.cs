namespace ElbowAssist.Bench.Comparing;

/// <summary>Who is held against whom.</summary>
internal static class RaterPairs
{
    /// <summary>
    /// Entrants against the reference and each reader, readers against each other within a condition and across, and each
    /// reader against the mean of the others, and against the reference where readers did not make it.
    /// </summary>
    public static IReadOnlyList<(Rater First, Rater Second)> Of(Contest contest)
    {
        var dataset = contest.Dataset;
        var reference = Rater.Reference(dataset);
        var readers = Rater.Readers(dataset.Films.SelectMany(f => f.Placements.Select(p => (f, p))));
        var entrants = contest.Entrants.Select(e => Rater.Of(e.Name, contest.Scored[e.Name])).ToList();
        var own = readers.Where(r => r.Role == RaterRole.Reader).ToList();
        // COCO keypoints are a reference that readers made, and held against it they would be held against themselves.
        var madeTheReference = dataset.Coco is not null;
        return
        [
            .. entrants.Select(e => (e, reference)),
            .. own.Count > 1 || readers.Count > own.Count ? entrants.SelectMany(e => readers.Select(r => (e, r))) : [],
            .. readers.SelectMany((r, i) => readers.Skip(i + 1).Select(other => (r, other))),
            .. own.Count > 2 ? own.Select(r => (r, Rater.MeanOfOthers(dataset, r.Reader))) : [],
            .. readers.Where(r => !madeTheReference || r.Role == RaterRole.ReaderWithProposals).Select(r => (r, reference)),
        ];
    }
}
