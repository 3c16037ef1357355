namespace ElbowAssist.Anatomy.Measurements;

/// <summary>What a measurement is: its construction, sign, unit, source, what it needs and where its decision limits lie.</summary>
public abstract class MeasurementDefinition
{
    private protected MeasurementDefinition()
    {
    }

    /// <summary>Stable name, as in results.</summary>
    public abstract string Name { get; }

    /// <summary>The view on which it is laid.</summary>
    public abstract View View { get; }

    /// <summary><c>deg</c>, <c>mm</c> or <c>1</c> (a ratio).</summary>
    public abstract string Unit { get; }

    /// <summary>How it is laid, which way it counts and what it cannot say, in a sentence or two for the reader.</summary>
    public abstract string Note { get; }

    /// <summary>Publication behind construction or range, or <c>construction of this project</c>.</summary>
    public abstract string Source { get; }

    /// <summary>Landmarks it cannot do without.</summary>
    public abstract IReadOnlyList<LandmarkNeed> Needs { get; }

    /// <summary>What must hold of the film besides.</summary>
    public virtual IReadOnlyList<FilmCondition> Conditions => [];

    /// <summary>Named ranges whose probabilities are reported; empty for most measurements.</summary>
    public virtual IReadOnlyList<Zone> Zones => [];

    /// <summary>Name of a second accepted construction of the same thing, or null.</summary>
    public virtual string? OtherConstruction => null;

    /// <summary>
    /// Redraw interval, in <see cref="Unit"/>, from which a value says nothing any more and is withheld. Choice of this
    /// project: the whole capitellum for positions and offsets, 30° for angles.
    /// </summary>
    public virtual double WidestInterval => Unit == "deg" ? 30 : 1;

    /// <summary>Circles the construction rests on: <c>capitellum</c>, <c>trochlea</c>, or none.</summary>
    public virtual IReadOnlyList<string> Circles => [];

    /// <summary>Values at which a reader's decision may turn, for this patient, ascending; often none.</summary>
    public virtual IReadOnlyList<double> DecisionLimits(Patient patient) => [];

    /// <summary>What is added to <see cref="Note"/> beside a value, such as the same angle in another convention.</summary>
    public virtual string? NoteBeside(double value) => null;

    /// <summary>Whether it rests on the humeral shaft axis, whose levels must span a least stretch.</summary>
    internal virtual bool RestsOnShaftAxis => false;

    /// <summary>Number of lines the construction draws.</summary>
    internal abstract int LineCount { get; }
}
