namespace ElbowAssist.Batch.Results;

/// <summary>What makes the readings of a batch; the same film and recipe give the same result.</summary>
/// <param name="Models">SHA-256 over models, calibration and limits, 64 lower-case hexadecimal digits.</param>
/// <param name="Pipeline">Version of the program with a mark of its build: letters, digits, <c>.</c> and <c>-</c>.</param>
public sealed record Recipe(string Models, string Pipeline);
