using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Bench.Calibrating;
using ElbowAssist.Bench.Scoring;
using ElbowAssist.Bench.Tables;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Geometry;
using ElbowAssist.Models.Merging;
using ElbowAssist.Pipeline.Proposals;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Assembly;
using ElbowAssist.Testing;

namespace ElbowAssist.Bench.Tests;

/// <summary>Invented films whose truth, reading and proposals are set value by value.</summary>
internal static class MadeUp
{
    public const string Position = "anterior-humeral-line.position";
    public const string ShaftPosition = "anterior-humeral-line.shaft.position";

    /// <summary>A lateral of a grown, uninjured elbow with these true values; change it with <c>with</c>.</summary>
    public static TruthFile Truth(params (string Name, double Value)[] values) => new()
    {
        Image = SampleReadings.Lateral().Image,
        View = new ViewFinding(View.Lateral, new Dictionary<string, double>(StringComparer.Ordinal), 2),
        Side = Side.Left,
        Patient = new Patient(480, Sex.Female),
        Context = FilmContext.Acute,
        Landmarks = [],
        Measurements = [.. values.Select(v => Given(v.Name, v.Value, v.Value, v.Value) with { Redraw95 = null })],
        Simulated = Simulated(480, viewError: 2),
    };

    public static SimulatedFacts Simulated(int ageMonths, double viewError, IReadOnlyList<string>? injuries = null, params (string Name, double Value)[] exposure) => new(
        1, ageMonths, Sex.Female, Side.Left, injuries ?? [], viewError,
        exposure.ToDictionary(e => e.Name, e => e.Value, StringComparer.Ordinal),
        new Dictionary<string, double>(StringComparer.Ordinal));

    public static TruthFile Aged(this TruthFile truth, int months) => truth with
    {
        Patient = truth.Patient with { AgeMonths = months },
        Simulated = truth.Simulated! with { AgeMonths = months },
    };

    public static Measurement Given(string name, double value, double low, double high, MeasurementState state = MeasurementState.Measured, params string[] reasons) => new()
    {
        Name = name,
        Value = value,
        Unit = "1",
        Redraw95 = new Interval(low, high),
        State = state,
        Reasons = reasons,
        Zones = null,
        Note = "",
        Source = "made up",
    };

    public static Measurement Withheld(string name, params string[] reasons) =>
        Given(name, 0, 0, 0) with { Value = null, Redraw95 = null, State = MeasurementState.Withheld, Reasons = reasons };

    /// <summary>A reading that was not refused; its reasons are those of failed checks and measurements.</summary>
    public static ReadFilm Read(TruthFile truth, IReadOnlyList<Measurement> measurements, params AdequacyCheck[] checks) => new(truth, SampleReadings.Lateral() with
    {
        Image = truth.Image,
        View = truth.View,
        Patient = truth.Patient,
        Adequacy = new Adequacy(false, checks, [], []),
        Landmarks = [],
        Lines = [],
        Circles = [],
        Measurements = measurements,
        Evidence = [],
        Reasons = [.. checks.Where(c => !c.Passed).Select(c => c.Reason!).Concat(measurements.SelectMany(m => m.Reasons)).Distinct(StringComparer.Ordinal).Select(r => new Reason(r, r))],
    });

    public static ReadFilm Refused(TruthFile truth, string reason) => new(truth, SampleReadings.Refused() with
    {
        Image = truth.Image,
        Patient = truth.Patient,
        Reasons = [new Reason(reason, reason)],
    });

    /// <summary>A failed or a met check.</summary>
    public static AdequacyCheck Check(string name, double value, string? reason = null) => new(name, value, 1, reason is null, reason);

    public static CalibrationFilm Proposed(TruthFile truth, IReadOnlyList<MergedProposal>? landmarks = null, IReadOnlyList<double>? features = null) => new(truth, new ProposedFilm(
        truth.Image, null, truth.Side, truth.Patient, truth.Context, new ReaderStatements(),
        new FilmProposals
        {
            Image = new Dictionary<string, double>(StringComparer.Ordinal),
            Landmarks = new LandmarkProposals(
                new ModelIdentity("made up", "1", new string('0', 64)), View.Lateral, Similarity.Identity, 2, landmarks ?? [], null, features ?? []),
        }));

    public static MergedProposal Proposal(string name, Point at, double deviation = 1) =>
        new(name, at, Covariance.Isotropic(deviation), 1, 1, Covariance.Zero, null, [0]);

    /// <summary>The cell of the first row whose cells begin with these, in a column by name.</summary>
    public static object Cell(this Table table, string column, params object[] beginning) =>
        table.Rows.First(r => beginning.SequenceEqual(r.Take(beginning.Length)))[table.Columns.ToList().IndexOf(column)];
}
