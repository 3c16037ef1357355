using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Measurements;
using ElbowAssist.Reading.Reasons;

namespace ElbowAssist.Reading.Assembly;

/// <summary>
/// Turns values into measurements of a reading. What is withheld is built without its value, so that nothing of it can
/// travel further: neither lines nor circles nor intervals nor zones nor the words beside a value.
/// </summary>
internal sealed class MeasurementAssembly
{
    private readonly ReadingInput input;
    private readonly FilmLandmarks landmarks;
    private readonly FilmFacts facts;
    private readonly IReadOnlyList<string> everywhere;

    /// <param name="input">What the reading is assembled from.</param>
    /// <param name="landmarks">The film's landmarks.</param>
    /// <param name="facts">Which conditions hold.</param>
    /// <param name="everywhere">Reasons that withhold every measurement of the film.</param>
    public MeasurementAssembly(ReadingInput input, FilmLandmarks landmarks, FilmFacts facts, IReadOnlyList<string> everywhere)
    {
        (this.input, this.landmarks, this.facts, this.everywhere) = (input, landmarks, facts, everywhere);
    }

    /// <summary>Measurements, lines and circles of the film.</summary>
    public AssembledMeasurements Assemble(IReadOnlyList<MeasuredValue> values)
    {
        var reasons = values.ToDictionary(v => v.Definition.Name, ReasonsToWithhold, StringComparer.Ordinal);
        var kept = values.Where(v => reasons[v.Definition.Name].Count == 0).ToList();
        var byName = kept.ToDictionary(v => v.Definition.Name, StringComparer.Ordinal);
        return new AssembledMeasurements(
            [.. values.Select(v => byName.ContainsKey(v.Definition.Name)
                ? Kept(v, byName)
                : Withheld(v.Definition, reasons[v.Definition.Name]))],
            [.. kept.SelectMany(v => v.Lines.Select(l => Named(v.Definition.Name, l)))],
            [.. kept.SelectMany(v => v.Circles).DistinctBy(c => c.Name)
                .Select(c => new NamedCircle(c.Name, c.Circle.Centre, c.Circle.Radius))]);
    }

    private List<string> ReasonsToWithhold(MeasuredValue value)
    {
        var definition = value.Definition;
        List<string> reasons = [.. definition.Conditions.Select(facts.Unmet).OfType<string>(), .. everywhere];
        if (value.Value is null)
        {
            var needed = definition.Needs.SelectMany(n => n.Landmarks).ToHashSet(StringComparer.Ordinal);
            var told = input.Unusable.Where(u => needed.Contains(u.Name)).Select(u => u.Reason).ToList();
            reasons.AddRange(told.Count > 0 ? told : value.Reasons);
        }
        else if (value.Redraw95 is { } interval && !(interval.High - interval.Low <= definition.WidestInterval))
        {
            reasons.Add(ReasonCodes.LandmarkSpread);
        }

        return [.. reasons.Distinct(StringComparer.Ordinal)];
    }

    private static Measurement Withheld(MeasurementDefinition definition, IReadOnlyList<string> reasons) => new()
    {
        Name = definition.Name,
        Value = null,
        Unit = definition.Unit,
        Redraw95 = null,
        State = MeasurementState.Withheld,
        Reasons = reasons,
        Zones = null,
        Note = definition.Note,
        Source = definition.Source,
    };

    private Measurement Kept(MeasuredValue value, Dictionary<string, MeasuredValue> kept)
    {
        var definition = value.Definition;
        var either = EitherSide.Reasons(value, kept, definition.DecisionLimits(AgedPatient));
        var interval = value.Redraw95 ?? throw new InvalidOperationException($"{definition.Name} has no redraw interval.");
        return new Measurement
        {
            Name = definition.Name,
            Value = value.Value,
            Unit = definition.Unit,
            Redraw95 = new Interval(interval.Low, interval.High),
            State = either.Count > 0 ? MeasurementState.EitherSide : MeasurementState.Measured,
            Reasons = either,
            Zones = value.Zones,
            Note = string.Join(' ', NoteParts(definition, value.Value!.Value, either)),
            Source = definition.Source,
        };
    }

    // Limits by age apply where the reader has said adult or child, too.
    private Patient AgedPatient => input.Patient.AgeMonths is null
        ? input.Patient with { AgeMonths = StatedAge.TypicalMonths(input.Statements.Maturity) }
        : input.Patient;

    private IEnumerable<string> NoteParts(MeasurementDefinition definition, double value, IReadOnlyList<string> either)
    {
        yield return definition.Note;
        if (definition.NoteBeside(value) is { } beside)
        {
            yield return beside;
        }

        if (either.Contains(ReasonCodes.ConstructionsDiffer))
        {
            yield return ReasonTable.Default[ReasonCodes.ConstructionsDiffer].Text;
        }

        if (definition.Needs.SelectMany(n => n.Landmarks).Any(landmarks.AssumedSpread.Contains))
        {
            yield return AssumedSpread.Note;
        }
    }

    private static NamedLine Named(string name, MeasuredLine line) => new(name, line.Line.Point, line.Line.Direction)
    {
        Spread = new LineSpread(line.OffsetVariance, line.OffsetAngleCovariance, line.AngleVariance),
    };
}

/// <summary>What is left of a film's values once it is known what the film can carry.</summary>
internal sealed record AssembledMeasurements(
    IReadOnlyList<Measurement> Measurements,
    IReadOnlyList<NamedLine> Lines,
    IReadOnlyList<NamedCircle> Circles);
