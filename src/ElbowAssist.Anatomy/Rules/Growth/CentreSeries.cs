namespace ElbowAssist.Anatomy.Rules.Growth;

/// <summary>A span of ages in years.</summary>
public readonly record struct AgeSpan(double From, double To);

/// <summary>What one publication says of one centre in one sex.</summary>
/// <param name="Centre">The centre.</param>
/// <param name="Sex">Sex; series that pooled the sexes have one row for each.</param>
/// <param name="Appearance">Ages between which the centre appears.</param>
/// <param name="AppearanceMedian">Median age of appearance, where given.</param>
/// <param name="Fusion">Ages between which it has joined the shaft, where given.</param>
/// <param name="Source">The publication.</param>
/// <param name="SpanIsAssumed">True where only a median of appearance is published and the span around it is a choice of this project.</param>
/// <param name="FusionIsAssumed">The same of fusion.</param>
public sealed record CentreSeries(
    GrowthCentre Centre,
    Sex Sex,
    AgeSpan Appearance,
    double? AppearanceMedian,
    AgeSpan? Fusion,
    Publication Source,
    bool SpanIsAssumed,
    bool FusionIsAssumed = false);
