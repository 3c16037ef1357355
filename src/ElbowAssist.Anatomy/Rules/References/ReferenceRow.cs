namespace ElbowAssist.Anatomy.Rules.References;

/// <summary>A published range or distribution of a measurement. No row is a limit.</summary>
/// <param name="Measurement">Measurement name.</param>
/// <param name="FromMonths">First month of age the population covers.</param>
/// <param name="BelowMonths">First month it no longer covers, or null if open.</param>
/// <param name="Text">The figure with its population, in the unit of the measurement.</param>
/// <param name="Source">The publication.</param>
public sealed record ReferenceRow(string Measurement, int FromMonths, int? BelowMonths, string Text, Publication Source);
