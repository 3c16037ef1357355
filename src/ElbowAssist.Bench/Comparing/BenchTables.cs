using ElbowAssist.Bench.Datasets;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Comparing;

/// <summary>Every table of a bench but that of time.</summary>
public static class BenchTables
{
    /// <summary>The tables, those without a row left out.</summary>
    /// <param name="dataset">The films and their reference.</param>
    /// <param name="entrants">Who is scored; their names differ.</param>
    public static IReadOnlyList<Table> Of(FilmDataset dataset, IReadOnlyList<Entrant> entrants) => Of(new Contest(dataset, entrants));

    internal static IReadOnlyList<Table> Of(Contest contest)
    {
        var pairs = RaterPairs.Of(contest);
        Func<Table>[] tables =
        [
            () => EntrantTable.Of(contest),
            () => LandmarkErrorTable.Of(contest),
            () => SuccessTables.Rates(contest),
            () => SuccessTables.Curve(contest),
            () => LandmarkTable.Of(contest),
            () => MeasurementTable.Of(contest),
            () => AgreementTables.Landmarks(contest, pairs),
            () => AgreementTables.Measurements(contest, pairs),
            () => LineAgreementTable.Of(contest, pairs),
            () => ReaderTables.Together(contest),
            () => ReaderTables.WithAndWithout(contest),
            () => ComparisonTable.Of(contest),
            () => ProbabilityTables.Scores(contest),
            () => ProbabilityTables.Curve(contest),
            () => RiskTables.Curve(contest),
            () => RiskTables.Area(contest),
            () => RefusalTables.Films(contest),
            () => RefusalTables.Values(contest),
        ];
        return [.. tables.AsParallel().AsOrdered().Select(make => make()).Where(t => t.Rows.Count > 0)];
    }
}
