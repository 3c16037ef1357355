using System.Globalization;
using ElbowAssist.Exchange.Json;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli.Films;

/// <summary>What became of a film.</summary>
/// <param name="Summary">One line for standard output.</param>
/// <param name="Complaints">Sentences for standard error.</param>
/// <param name="Code">Its share in the exit code.</param>
internal sealed record FilmOutcome(string Summary, IReadOnlyList<string> Complaints, ExitCode Code)
{
    public static FilmOutcome Of(FilmReading reading, IReadOnlyList<Reason> conflicts)
    {
        var file = reading.Image.File;
        IReadOnlyList<string> complaints = [.. conflicts.Select(c => $"{file}: {c.Text}")];
        return reading.Adequacy.Refused
            ? new FilmOutcome($"{file}: no reading. {string.Join(' ', reading.Reasons.Select(r => r.Text))}", complaints, ExitCode.Refused)
            : new FilmOutcome(
                string.Create(CultureInfo.InvariantCulture,
                    $"{file}: {Vocabularies.View.WordOf(reading.View.Name)}, {Count(reading, MeasurementState.Measured)} measured, {Count(reading, MeasurementState.EitherSide)} on either side of a limit, {Count(reading, MeasurementState.Withheld)} withheld"),
                complaints,
                ExitCode.Done);
    }

    public static FilmOutcome Unread(string file, string sentence, ExitCode code) =>
        new($"{file}: not read", [sentence], code);

    private static int Count(FilmReading reading, MeasurementState state) => reading.Measurements.Count(m => m.State == state);
}
