namespace ElbowAssist.Bench.Comparing;

/// <summary>Values gathered by patient, because films of one patient are no independent witnesses.</summary>
internal static class ByPatient
{
    /// <summary>One list of values per patient, in the order in which patients first appear.</summary>
    public static IReadOnlyList<IReadOnlyList<double>> Of(IEnumerable<ScoredFilm> films, Func<ScoredFilm, IEnumerable<double>> values) =>
        [.. films.GroupBy(f => f.Film.Patient, StringComparer.Ordinal).Select(patient => (IReadOnlyList<double>)[.. patient.SelectMany(values)])];
}
